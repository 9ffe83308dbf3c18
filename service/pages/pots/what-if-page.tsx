import type { Collection } from "../../../core/plan/collection.ts";
import { calendarDay } from "../../../core/site/local-days.ts";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import type { Words } from "../../words/words.ts";
import { Courses, type DrawnCourse, StrokeSample } from "../drawing/courses.tsx";
import { SelectField } from "../forms/fields.tsx";
import type { PotStand } from "./pot-stand.ts";
import type { WhatIf, WhatIfCourse, WhatIfKind } from "./what-if.ts";

const STROKES: Readonly<Record<WhatIfKind, DrawnCourse["stroke"]>> = {
  left: "solid",
  watered: "dashed",
  elsewhere: "dotted",
};

interface WhatIfPageProps {
  readonly stand: PotStand;
  readonly collection: Collection;
  readonly whatIf: WhatIf | null;
  readonly spotId: string;
  readonly words: Words;
}

/** What would come of leaving a pot, watering it, or standing it elsewhere, from the same model as the plan. */
export function WhatIfPage({ stand, collection, whatIf, spotId, words }: WhatIfPageProps) {
  const { say } = words;
  const path = `/pots/${encodeURIComponent(stand.pot.id)}`;
  const others = collection.spots.filter(({ id }) => id !== stand.spotId);
  return (
    <>
      <h1>{say("what-if.title", { pot: stand.pot.name })}</h1>
      <p>
        <a href={path}>{say("what-if.back")}</a>
      </p>
      <p class="lead">{say("what-if.lead")}</p>
      {whatIf ? (
        <Drawn whatIf={whatIf} zone={collection.site.zone} words={words} />
      ) : (
        <p>{say("pot.no-plan")}</p>
      )}
      <form method="get" action={`${path}/what-if`} class="search">
        <SelectField
          form={{ typed: { spot: spotId }, problems: [], words }}
          name="spot"
          label={say("what-if.other")}
          options={others.map(({ id, name }) => ({ value: id, text: name }))}
        />
        <button type="submit">{say("bench.show")}</button>
      </form>
    </>
  );
}

function Drawn({ whatIf, zone, words }: { whatIf: WhatIf; zone: string; words: Words }) {
  const { courses, refillFrac, capacityMl } = whatIf;
  const { say } = words;
  return (
    <>
      <Courses
        courses={courses.map(({ kind, spotName, contentFrac }) => ({
          stroke: STROKES[kind],
          name: spotName,
          contentFrac,
        }))}
        refillFrac={refillFrac}
        days={daysOf(whatIf, zone, words)}
        words={{
          holds: say("outlook.holds", { capacityMl }),
          waits: say("outlook.waits"),
          label: say("what-if.label"),
        }}
      />
      <ul class="plain">
        {courses.map((course) => (
          <li>
            <StrokeSample stroke={STROKES[course.kind]} /> {courseText(course, words)}
          </li>
        ))}
      </ul>
    </>
  );
}

function courseText({ kind, spotName, refillDays, wetBaseHours }: WhatIfCourse, { say }: Words): string {
  const head = say(`what-if.${kind}`, { spot: spotName });
  const refill = refillText(refillDays, { say });
  const wet = wetBaseHours < 1 ? "" : ` ${say("what-if.wet", { wetBaseHours: Math.round(wetBaseHours) })}`;
  return `${head} ${refill}${wet}`;
}

function refillText(refillDays: number | null, { say }: Pick<Words, "say">): string {
  if (refillDays === null) return say("what-if.no-refill");
  return refillDays === 0
    ? say("outlook.refill-now")
    : say("what-if.refill", { refillDays: Math.floor(refillDays) });
}

/** Midnights on the axis, with the name of the day that begins there. */
function daysOf({ startUtcMs, stepMs, courses }: WhatIf, zone: string, words: Words) {
  const lengthMs = stepMs * ((courses[0]?.contentFrac.length ?? 1) - 1);
  const days: { name: string; atFrac: number }[] = [];
  for (let at = startUtcMs + HOUR_MS; at < startUtcMs + lengthMs - 6 * HOUR_MS; at += HOUR_MS) {
    const day = calendarDay(at, zone);
    if (day !== calendarDay(at - HOUR_MS, zone))
      days.push({ name: words.weekday(day), atFrac: (at - startUtcMs) / lengthMs });
  }
  return days;
}
