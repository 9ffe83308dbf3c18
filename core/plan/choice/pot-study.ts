import type { PotNow } from "../../pot/pot-now.ts";
import type { Spot } from "../../site/spot.ts";
import type { SpotDays } from "../days/spot-days.ts";
import { totalHarm } from "../harm/course.ts";
import { type Stander, spotHarm } from "../harm/spot-harm.ts";
import { sumOf } from "../harm/term.ts";
import type { Lift, PotOutlook } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import { potOutlook } from "../rows/pot-outlook.ts";
import { type CarryOption, carryOptions } from "./carry-options.ts";
import type { HomeSpot } from "./home-spot.ts";
import { potLift } from "./pot-lift.ts";
import { massNowKg } from "./pot-mass.ts";
import { rollCourse, stayingAt } from "./roll-course.ts";
import { type Standing, standingAt, standingOf } from "./standing.ts";
import { tripHarm } from "./trouble.ts";
import { type WaterChoice, waterChoice } from "./water-choice.ts";

/** Other spots that are rolled out for one pot, the likeliest first. */
const MOST_SPOTS = 3;

/** All that one pot's deeds are chosen from; small enough to keep for ten thousand pots. */
export interface PotStudy {
  readonly now: PotNow;
  /** When it came to where it stands; null when it never moved. */
  readonly hereSinceUtcMs: number | null;
  readonly stander: Stander;
  readonly lift: Lift;
  readonly home: Standing;
  readonly here: Standing;
  /** Every way of spending the horizon that was thought through; empty when nothing threatens. */
  readonly options: readonly CarryOption[];
  readonly outlook: PotOutlook;
  /** What the can should do if the pot is not carried. */
  readonly waterHere: WaterChoice;
}

/** Looks at one pot: where it stands, where it belongs, and what else could be done if that would hurt. */
export function studyPot(context: PlanContext, now: PotNow, { homeId, hereSinceUtcMs }: HomeSpot): PotStudy {
  const massKg = massNowKg(now);
  const stander: Stander = { now, massKg, tender: isTender(now, context.nowUtcMs) };
  const lift = potLift({
    massKg,
    vessel: now.vessel,
    ...(context.settings.liftLimitKg === undefined ? {} : { liftLimitKg: context.settings.liftLimitKg }),
  });
  const hereAt = context.spots.get(now.spotId)!;
  const homeAt = context.spots.get(homeId) ?? hereAt;
  const rolled = rollCourse(context, { now, doings: stayingAt(hereAt), scratch: "kept" });
  const here = standingOf(context, { stander, at: hereAt, isHome: hereAt === homeAt, rolled });
  const study = {
    now,
    hereSinceUtcMs,
    stander,
    lift,
    here,
    outlook: potOutlook(context, { stander, at: hereAt, course: rolled.course }),
    waterHere: waterChoice(context, { now, doings: stayingAt(hereAt), rolled }),
  };
  if (hereAt !== homeAt) {
    const home = standingAt(context, { stander, at: homeAt, isHome: true });
    return { ...study, home, options: optionsBetween(context, { home, away: here, lift, startsAway: true }) };
  }
  const options = spotsWorthATrip(context, { here, stander }).flatMap((at) => {
    const away = standingAt(context, { stander, at, isHome: false });
    return optionsBetween(context, { home: here, away, lift, startsAway: false });
  });
  return { ...study, home: here, options };
}

function optionsBetween(
  context: PlanContext,
  pair: { home: Standing; away: Standing; lift: Lift; startsAway: boolean },
): CarryOption[] {
  return carryOptions({ ...pair, tripHarm: tripHarm(context.settings) });
}

/**
 * Spots that could save more than a carry costs: what hurts here and would not there, at most. Pots that nothing
 * threatens have none, and cost no further roll-out.
 */
function spotsWorthATrip(
  context: PlanContext,
  { here, stander }: { here: Standing; stander: Stander },
): SpotDays[] {
  const bySpotHere = sumOf(here.bySpot);
  const wetHere = Object.values(here.wet).reduce((sum, byDay) => sum + totalHarm({ byDay }), 0);
  const least = LEAST_SAVING * tripHarm(context.settings);
  if (bySpotHere + wetHere < least) return [];
  return [...context.spots.values()]
    .filter(({ spot }) => spot !== here.at.spot && fits(spot, stander.now))
    .map((at) => ({ at, saving: bySpotHere - sumOf(spotHarm(context.book, at, stander)) + wetHere }))
    .filter(({ saving }) => saving >= least)
    .sort((a, b) => b.saving - a.saving || (a.at.spot.id < b.at.spot.id ? -1 : 1))
    .slice(0, MOST_SPOTS)
    .map(({ at }) => at);
}

/** No carry can be worth less than this many trips: the lightest pot, a few steps, there and back. */
const LEAST_SAVING = 0.25;

/** Whether the pot goes in at all, room being left. */
function fits({ room }: Spot, { vessel, pot }: PotNow): boolean {
  return room?.maxHeightCm === undefined || vessel.heightCm + pot.plantHeightCm <= room.maxHeightCm;
}

/** In the shade weeks after planting. */
function isTender({ aftercare }: PotNow, nowUtcMs: number): boolean {
  return aftercare !== null && aftercare.shadeUntilUtcMs > nowUtcMs;
}
