import { type ComparedMix, compareMixes } from "../../../core/mix/compare-mixes.ts";
import { componentsById } from "../../../core/mix/library.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import { groupsById } from "../../../core/plant/groups.ts";
import { moistureProfile } from "../../../core/pot/profile.ts";
import type { Words } from "../../words/words.ts";
import { PotSection } from "../drawing/pot-section.tsx";
import type { BenchProps } from "./bench-page.tsx";

/** Daily demand of the air where no plan tells this week's, mm. Chosen by us: a mild day. */
const MILD_ET0_MM = 3;

/** The bench beside a kept mix, in the same vessel and under this week's weather. */
export function Comparison({ context: { words }, now, state, mix }: BenchProps) {
  const other = now.collection.mixes.find(({ id }) => id === state.typed.with && id !== mix?.id);
  const values = groupsById().get(state.isLeafy ? "other-leafy" : "other-succulent")?.values;
  if (!other || !values) return null;
  const bench = {
    id: "bench",
    name: mix?.name ?? words.say("bench.this"),
    recipe: { kind: "parts" as const, parts: state.parts },
  };
  const vessel = state.vessel!;
  const weekEt0Mm = meanEt0Mm(now.plan);
  const et0MmPerDay = weekEt0Mm ?? MILD_ET0_MM;
  const compared = compareMixes({
    mixes: [bench, other],
    vessel,
    components: componentsById(now.collection.ownComponents),
    plant: { values, canopyWidthCm: 1.3 * vessel.topCm },
    et0MmPerDay,
  });
  if (!compared.ok) return null;
  const names = [bench.name, other.name];
  return (
    <section>
      <h2>{words.say("compare.title")}</h2>
      <div class="compare">
        {compared.value.map((one, index) => (
          <One one={one} name={names[index] ?? ""} vessel={vessel} words={words} />
        ))}
      </div>
      <p class="hint">
        {words.say(weekEt0Mm === null ? "compare.under-mild" : "compare.under", { et0Mm: et0MmPerDay })}
      </p>
    </section>
  );
}

/** Null where no plan tells this week. */
function meanEt0Mm(plan: Plan | null): number | null {
  const known = plan?.days.map(({ et0Mm }) => et0Mm).filter(Number.isFinite) ?? [];
  return known.length === 0 ? null : known.reduce((sum, mm) => sum + mm, 0) / known.length;
}

interface OneProps {
  readonly one: ComparedMix;
  readonly name: string;
  readonly vessel: NonNullable<BenchProps["state"]["vessel"]>;
  readonly words: Words;
}

function One({ one, name, vessel, words }: OneProps) {
  const { inVessel, daysToDry } = one;
  const { hold, retention } = inVessel;
  const { say } = words;
  return (
    <div>
      <h3>{name}</h3>
      <PotSection
        vessel={vessel}
        profile={moistureProfile({ retention, vessel, waterMl: hold.capacityMl })}
        lineMm={4}
        pxPerCm={Math.min(5, 140 / Math.max(vessel.topCm, vessel.baseCm))}
        label={say("bench.section", { wetLayerCm: hold.wetLayerCm, capacityMl: hold.capacityMl })}
      />
      <ul class="facts">
        <li>{say("compare.holds", { capacityMl: hold.capacityMl })}</li>
        <li>{say("compare.air", { airFrac: hold.airSpaceFrac, wetLayerCm: hold.wetLayerCm })}</li>
        <li>{say("compare.mass", { massKg: hold.drainedMassKg })}</li>
        <li>{daysText(daysToDry, words)}</li>
      </ul>
    </div>
  );
}

/** In whole days; less than one is said as one. */
function daysText(daysToDry: ComparedMix["daysToDry"], { say }: Words): string {
  if (daysToDry === null) return say("compare.dries-late");
  const [lowDays, highDays] = [daysToDry.low, daysToDry.high].map((days) => Math.max(1, Math.round(days)));
  return lowDays === highDays
    ? say("compare.dries-same", { days: lowDays! })
    : say("compare.dries", { lowDays: lowDays!, highDays: highDays! });
}
