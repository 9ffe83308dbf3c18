import { windowToPrepareFor } from "../../core/mix/batch-starts.ts";
import type { WorkWindow } from "../../core/plan/plan.ts";
import type { PotPlan } from "../../core/plan/pot-plan.ts";
import { calendarDay } from "../../core/site/local-days.ts";
import type { Naming } from "./naming.ts";
import { potsText } from "./pots-text.ts";

/** Windows named in a brief; further ones are on the page of the sky. */
const WINDOWS_AT_MOST = 5;

/** Hours for potting, when to begin what they need, and which pots are better left alone in them. */
export function windowLines(naming: Naming): string[] {
  const { plan, words } = naming;
  if (plan.workWindows.length === 0) return [words.say("brief.windows.none")];
  const windows = plan.workWindows.slice(0, WINDOWS_AT_MOST);
  const preparedFor = windowToPrepareFor(windows.filter(({ prepareFrom }) => prepareFrom !== undefined));
  const waiting = plan.pots.filter(waitsForRepotting).map(({ potId }) => potId);
  return [
    ...windows.map((window) => windowLine(window, { naming, prepares: window === preparedFor })),
    ...(waiting.length === 0
      ? []
      : [words.say("brief.windows.not-for", { pots: potsText(waiting, naming) })]),
  ];
}

/** The hour to begin is said once, of the window that is worth it. */
function windowLine(window: WorkWindow, { naming, prepares }: { naming: Naming; prepares: boolean }): string {
  const { plan, words, when } = naming;
  const line = words.say("brief.window", {
    dayName: words.day(calendarDay(Date.parse(window.from), plan.zone)),
    fromTime: words.clock(Date.parse(window.from), plan.zone),
    toTime: words.clock(Date.parse(window.to), plan.zone),
    dryShareFrac: window.dryShareFrac,
    dryDaysAfter: window.dryDaysAfter,
  });
  if (window.prepareFrom === undefined || !prepares) return line;
  return words.say("brief.window.prepare", { window: line, prepareTime: when(window.prepareFrom) });
}

function waitsForRepotting({ holds = [] }: PotPlan): boolean {
  return holds.some(({ kind }) => kind === "repot");
}
