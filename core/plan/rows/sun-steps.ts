import { calendarDay } from "../../site/local-days.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { Deed } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import { confidenceOf } from "./confidence-of.ts";

/** Days in the dim after which leaves are no longer used to the sun; and how long they take to get used to it again. */
const UNUSED_AFTER_DAYS = 10;
const STEPS_DAYS = 14;
/** How much brighter the new place must be. Chosen by us: twice. */
const BRIGHTER_BY = 2;
/** Harm of a plant set straight into full sun. Chosen by us: leaves of a season. */
const SUNBURN_HARM = 0.03;

/** After a carry out from a dim place: shade at first. Common practice: two weeks of getting used to it. */
export function sunStepsDeed(context: PlanContext, study: PotStudy, carry: Deed | undefined): Deed | null {
  if (carry?.action !== "carry-out" || study.hereSinceUtcMs === null) return null;
  const from = carry.from === undefined ? context.nowUtcMs : Date.parse(carry.from);
  const awayDays = Math.floor((from - study.hereSinceUtcMs) / (24 * HOUR_MS));
  const brighter = study.home.at.spot.sunFrac / Math.max(0.01, study.here.at.spot.sunFrac);
  if (awayDays < UNUSED_AFTER_DAYS || brighter < BRIGHTER_BY) return null;
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
