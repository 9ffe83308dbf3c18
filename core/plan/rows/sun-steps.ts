import { instantOf } from "../../site/instant.ts";
import { calendarDay } from "../../site/local-days.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { daysInTheDim } from "../choice/days-in-the-dim.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { SpotDays } from "../days/spot-days.ts";
import type { Deed } from "../deed.ts";
import type { PlanContext } from "../plan-context.ts";
import { confidenceOf } from "./confidence-of.ts";

/** How long leaves take to get used to the sun again. */
const STEPS_DAYS = 14;
/** Harm of a plant set straight into full sun. Chosen by us: leaves of a season. */
const SUNBURN_HARM = 0.03;
/** Sun of one hour from which it burns such leaves, MJ/m2: a third of the noon of a clear summer day. Chosen by us. */
const STRONG_SUN_MJ_PER_M2 = 1;

/** After a carry out from a dim place: shade at first. Common practice: two weeks of getting used to it. */
export function sunStepsDeed(context: PlanContext, study: PotStudy, carry: Deed | undefined): Deed | null {
  if (carry?.action !== "carry-out") return null;
  const from = carry.from === undefined ? context.nowUtcMs : Date.parse(carry.from);
  const { hereSinceUtcMs, here, home } = study;
  const awayDays = daysInTheDim({ hereSinceUtcMs, here: here.at.spot, home: home.at.spot, utcMs: from });
  if (awayDays === null) return null;
  const byUtcMs = strongSunUtcMs(context, home.at, carry.by === undefined ? from : Date.parse(carry.by));
  // Where the sun is weak throughout, as behind a window, nothing burns.
  if (byUtcMs === null) return null;
  return {
    action: "shade",
    ...(carry.from === undefined ? {} : { from: carry.from }),
    by: instantOf(byUtcMs),
    until: calendarDay(from + STEPS_DAYS * 24 * HOUR_MS, context.site.zone),
    reason: { code: "sun-by-steps", numbers: { awayDays } },
    harmAvoided: SUNBURN_HARM,
    confidence: confidenceOf(0.7),
  };
}

/** When the sun first gets strong on a pot that stands out by some instant: that instant itself in the midst of a bright day; null when it does not in the days reckoned. */
function strongSunUtcMs(
  { startUtcMs, hourCount, size }: PlanContext,
  at: SpotDays,
  outUtcMs: number,
): number | null {
  const { lightMjPerM2 } = at.forcing;
  for (let hour = Math.max(0, Math.floor((outUtcMs - startUtcMs) / HOUR_MS)); hour < hourCount; hour++) {
    let sum = 0;
    for (let i = hour * size; i < (hour + 1) * size; i++) sum += lightMjPerM2[i]!;
    if (sum >= STRONG_SUN_MJ_PER_M2 * size) return Math.max(outUtcMs, startUtcMs + hour * HOUR_MS);
  }
  return null;
}
