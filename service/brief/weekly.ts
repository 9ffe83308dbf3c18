import type { Collection } from "../../core/plan/collection.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { Words } from "../words/words.ts";
import { briefOf } from "./brief.ts";
import type { BriefSection } from "./brief-value.ts";
import { comingWater, waterLines } from "./coming-water.ts";
import { namingFor } from "./naming.ts";

/** The week ahead in sentences: what its weather asks for, as it looks on the day on which it is written. */
export interface Weekly {
  readonly title: string;
  readonly lead: string;
  readonly days: readonly WeekDay[];
  readonly windows: BriefSection<string>;
  readonly credit: string;
}

export interface WeekDay {
  readonly name: string;
  readonly sky: string;
  /** Deeds that have a day, waterings to be expected, and dry times that end. */
  readonly lines: readonly string[];
}

const WEEK_DAYS = 7;

export function weeklyOf(input: { plan: Plan; collection: Collection; words: Words }): Weekly {
  const { plan, collection, words } = input;
  const naming = namingFor(input);
  const brief = briefOf(input);
  const waters = comingWater(plan);
  const coming = brief.coming.lines.slice(0, WEEK_DAYS);
  const dryEnds = (day: string): string[] => {
    const pots = plan.pots.filter(({ outlook }) => outlook.dryUntil === day);
    const names = words.list(pots.map(({ potId }) => naming.potName(potId)));
    return pots.length === 0 ? [] : [words.say("weekly.dry-ends", { pots: names })];
  };
  return {
    title: words.say("weekly.title", { forDay: plan.forDay, site: collection.site.name }),
    lead: words.say("weekly.lead"),
    days: coming.map(({ day, name, sky, deeds }) => ({
      name,
      sky,
      lines: [...deeds, ...waterLines(waters.get(day) ?? [], naming), ...dryEnds(day)],
    })),
    windows: brief.windows,
    credit: brief.trust.credit,
  };
}

/** The week as plain text. */
export function weeklyText({ title, lead, days, windows, credit }: Weekly): string {
  const blocks = [
    [title, lead],
    ...days.map(({ name, sky, lines }) => [`${name}: ${sky}`, ...lines.map((line) => `- ${line}`)]),
    [windows.heading, ...windows.lines.map((line) => `- ${line}`)],
    [credit],
  ];
  return `${blocks.map((lines) => lines.join("\n")).join("\n\n")}\n`.replaceAll("\u00a0", " ");
}
