import type { Collection } from "../../core/plan/collection.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { Words } from "../words/words.ts";
import { briefOf } from "./brief.ts";
import { comingWater, waterLines } from "./coming-water.ts";
import { groupedBy } from "./grouped-by.ts";
import { handledDeeds } from "./grouped-deeds.ts";
import { type Naming, namingFor } from "./naming.ts";

/** What to do on which day, for somebody who knows neither the plants nor where they stand. */
export interface Sheet {
  readonly title: string;
  readonly lead: string;
  readonly where: { readonly heading: string; readonly lines: readonly string[] };
  readonly days: readonly { readonly name: string; readonly lines: readonly string[] }[];
  readonly keepDry: { readonly heading: string; readonly lines: readonly string[] };
  readonly nothing: string;
  readonly beyond: string | null;
  readonly care: string;
  readonly credit: string;
}

export interface SheetDays {
  readonly fromDay: string;
  readonly toDay: string;
}

/** The days that the plan reckons; of a hand-over those within it. */
export function sheetOf(
  input: { plan: Plan; collection: Collection; words: Words },
  within?: SheetDays,
): Sheet {
  const { plan, collection, words } = input;
  const { say } = words;
  const naming = namingFor(input);
  const brief = briefOf(input);
  const waters = comingWater(plan);
  const today = handledDeeds(
    brief.stops.flatMap(({ deeds }) => deeds),
    naming,
  );
  const deeds = new Map([
    [plan.forDay, today],
    ...brief.coming.lines.map((line) => [line.day, line.handled] as const),
  ]);
  const last = plan.days.at(-1)?.day;
  return {
    title: say("holiday.title"),
    lead: say("holiday.lead"),
    where: { heading: say("holiday.walk"), lines: whereLines(collection, naming) },
    days: plan.days
      .filter(({ day }) => !within || (within.fromDay <= day && day <= within.toDay))
      .map(({ day }) => ({
        name: words.day(day),
        lines: [...(deeds.get(day) ?? []), ...waterLines(waters.get(day) ?? [], naming)],
      })),
    keepDry: {
      heading: brief.keepDry.heading,
      lines: brief.keepDry.lines.map(({ pot, until }) => (until === null ? pot : `${pot}, ${until}`)),
    },
    nothing: say("holiday.nothing"),
    beyond:
      last === undefined || (within && within.toDay <= last)
        ? null
        : say("holiday.beyond", { lastDay: last }),
    care: say("holiday.care"),
    credit: brief.trust.credit,
  };
}

/** Every spot with the pots that stand there now, in the order of the walk. */
function whereLines({ spots }: Collection, { plan, words, potName, spotName }: Naming): string[] {
  const order = new Map(spots.map(({ id, walkOrder }) => [id, walkOrder]));
  return [...groupedBy(plan.pots, ({ spotId }) => spotId)]
    .sort(([a], [b]) => (order.get(a) ?? Infinity) - (order.get(b) ?? Infinity))
    .map(([spotId, pots]) =>
      words.say("holiday.where", {
        place: spotName(spotId),
        pots: words.list(pots.map(({ potId }) => potName(potId))),
      }),
    );
}

/** The sheet as plain text, with boxes to tick. */
export function sheetText(sheet: Sheet): string {
  const { title, lead, where, days, keepDry, nothing, beyond, care, credit } = sheet;
  const blocks = [
    [title, lead],
    [care],
    [where.heading, ...where.lines.map((line) => `- ${line}`)],
    ...days.map(({ name, lines }) => [
      name,
      ...(lines.length === 0 ? [nothing] : lines.map((line) => `[ ] ${line}`)),
    ]),
    keepDry.lines.length === 0 ? [] : [keepDry.heading, ...keepDry.lines.map((line) => `- ${line}`)],
    beyond === null ? [] : [beyond],
    [credit],
  ];
  return `${blocks
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join("\n"))
    .join("\n\n")}\n`.replaceAll("\u00a0", " ");
}
