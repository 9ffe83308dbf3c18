import { calendarDay } from "../../site/local-days.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { daysInTheDim } from "../choice/days-in-the-dim.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { Deed } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import { confidenceOf } from "./confidence-of.ts";

/** How long leaves take to get used to the sun again. */
const STEPS_DAYS = 14;
/** Harm of a plant set straight into full sun. Chosen by us: leaves of a season. */
const SUNBURN_HARM = 0.03;

/** After a carry out from a dim place: shade at first. Common practice: two weeks of getting used to it. */
export function sunStepsDeed(context: PlanContext, study: PotStudy, carry: Deed | undefined): Deed | null {
  if (carry?.action !== "carry-out") return null;
  const from = carry.from === undefined ? context.nowUtcMs : Date.parse(carry.from);
  const { hereSinceUtcMs, here, home } = study;
  const awayDays = daysInTheDim({ hereSinceUtcMs, here: here.at.spot, home: home.at.spot, utcMs: from });
  if (awayDays === null) return null;
  return {
    action: "shade",
    ...(carry.from === undefined ? {} : { from: carry.from }),
    ...(carry.by === undefined ? {} : { by: carry.by }),
    until: calendarDay(from + STEPS_DAYS * 24 * HOUR_MS, context.site.zone),
    reason: { code: "sun-by-steps", numbers: { awayDays } },
    harmAvoided: SUNBURN_HARM,
    confidence: confidenceOf(0.7),
  };
}
