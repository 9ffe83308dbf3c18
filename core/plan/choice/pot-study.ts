import type { PotNow } from "../../pot/pot-now.ts";
import type { Spot } from "../../site/spot.ts";
import type { SpotDays } from "../days/spot-days.ts";
import type { Lift } from "../deed.ts";
import { totalHarm } from "../harm/course.ts";
import { type Stander, spotHarm } from "../harm/spot-harm.ts";
import { type HarmByTerm, sumOf } from "../harm/term.ts";
import type { PlanContext } from "../plan-context.ts";
import type { PotOutlook } from "../pot-plan.ts";
import { potOutlook } from "../rows/pot-outlook.ts";
import { type CarryOption, carryOptions } from "./carry-options.ts";
import { sumByDay } from "./day-costs.ts";
import { daysInTheDim } from "./days-in-the-dim.ts";
import type { HomeSpot } from "./home-spot.ts";
import { potLift } from "./pot-lift.ts";
import { massNowKg } from "./pot-mass.ts";
import { rollCourse, stayingAt } from "./roll-course.ts";
import {
  AWAY_HARM_PER_DAY,
  homeStanding,
  type Standing,
  standingAt,
  standingLike,
  standingOf,
} from "./standing.ts";
import { canBeCarried, carryTrips, tripHarm } from "./trouble.ts";
import { isAsked, type WaterChoice, waterNeed, weighPour } from "./water-choice.ts";

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
  /** Need of water where it stands. */
  readonly need: WaterChoice;
  /** What the can should do if it stays, where that was already weighed. */
  readonly waterHere: WaterChoice | null;
}

/** Looks at one pot: where it stands, where it belongs, and what else could be done if that would hurt. */
export function studyPot(context: PlanContext, now: PotNow, { homeId, hereSinceUtcMs }: HomeSpot): PotStudy {
  const massKg = massNowKg(now);
  const lift = potLift({
    massKg,
    vessel: now.vessel,
    ...(context.settings.liftLimitKg === undefined ? {} : { liftLimitKg: context.settings.liftLimitKg }),
  });
  const hereAt = context.spots.get(now.spotId)!;
  const homeAt = context.spots.get(homeId) ?? hereAt;
  const dim = { hereSinceUtcMs, here: hereAt.spot, home: homeAt.spot, utcMs: context.nowUtcMs };
  const tender = isFresh(now, context.nowUtcMs) || daysInTheDim(dim) !== null;
  const stander: Stander = { now, massKg, tender };
  const doings = stayingAt(hereAt);
  const rolled = rollCourse(context, { now, doings, scratch: "kept" });
  const here = standingOf(context, { stander, at: hereAt, isHome: hereAt === homeAt, rolled });
  const need = waterNeed(context, rolled, here.pass);
  const outlook = potOutlook(context, { stander, at: hereAt, course: rolled.course });
  const ways = waysToGo(context, { stander, here, homeAt, lift });
  const mayMove = ways.options.some(({ carries }) => carries > 0);
  const asked = isAsked(context, need, now);
  // Weighed at once where it can only stay, as long as its course is at hand.
  const stays = () => weighPour(context, { now, doings, rolled }, need);
  const waterHere = asked ? (mayMove ? null : stays()) : need;
  return { now, hereSinceUtcMs, stander, lift, here, need, outlook, ...ways, waterHere };
}

/** Where it belongs, and every way of spending the horizon between there and elsewhere; none when nothing threatens. */
function waysToGo(
  context: PlanContext,
  { stander, here, homeAt, lift }: { stander: Stander; here: Standing; homeAt: SpotDays; lift: Lift },
): Pick<PotStudy, "home" | "options"> {
  if (here.at !== homeAt) {
    const home = homeStanding(context, { stander, at: homeAt, here: here.at });
    return { home, options: optionsBetween(context, { home, away: here, lift, startsAway: true }) };
  }
  if (!mayBeThreatened(context, here)) return { home: here, options: [] };
  const options = standingsElsewhere(context, { here, stander, lift }).flatMap((away) =>
    optionsBetween(context, { home: here, away, lift, startsAway: false }),
  );
  return { home: here, options };
}

/** Rolls out at the spots worth a trip; those without rain share one roll-out. */
function standingsElsewhere(
  context: PlanContext,
  { here, stander, lift }: { here: Standing; stander: Stander; lift: Lift },
): Standing[] {
  const spots = spotsWorthATrip(context, { here, stander, lift });
  const dry = spots.filter((at) => !at.rainMm.some((rainMm) => rainMm > 0));
  const standings = spots
    .filter((at) => !dry.includes(at))
    .map((at) => standingAt(context, { stander, at, isHome: false }).standing);
  const [first, ...others] = dry;
  if (first === undefined) return standings;
  const { standing, rolled } = standingAt(context, { stander, at: first, isHome: false });
  return [...standings, standing, ...others.map((at) => standingLike(context, { stander, at, rolled }))];
}

function optionsBetween(
  context: PlanContext,
  pair: { home: Standing; away: Standing; lift: Lift; startsAway: boolean },
): CarryOption[] {
  return carryOptions({ ...pair, settings: context.settings });
}

/** Spots that could save more than the carries there and back cost: what hurts here and would not there, at most. */
function spotsWorthATrip(
  context: PlanContext,
  { here, stander, lift }: { here: Standing; stander: Stander; lift: Lift },
): SpotDays[] {
  const bySpotHere = sumOf(here.bySpot);
  const wetHere = wetHarm(here);
  const trip = tripHarm(context.settings);
  const least = LEAST_SAVING * trip;
  return [...context.spots.values()]
    .filter(({ spot }) => isMoreSheltered(spot, here.at.spot) && fits(spot, stander.now))
    .filter(({ spot }) => canBeCarried({ lift, from: here.at.spot, to: spot }))
    .map((at) => {
      const there = spotHarm(context.book, at, stander);
      const saving = bySpotHere - sumOf(there) + wetHere;
      const most = mostAvoided(here, there) + wetHere + here.wait.byMorning[here.wait.best]!;
      return { at, saving, pays: most > 2 * trip * carryTrips({ lift, from: here.at.spot, to: at.spot }) };
    })
    .filter(({ saving, pays }) => saving >= least && pays)
    .sort((a, b) => b.saving - a.saving || (a.at.spot.id < b.at.spot.id ? -1 : 1))
    .slice(0, MOST_SPOTS)
    .map(({ at }) => at);
}

/** What a pot away on just the days that are better there is spared of what the spot itself does. */
export function mostAvoided({ bySpot, thirst }: Standing, there: HarmByTerm): number {
  const here = sumByDay(bySpot, thirst.length);
  const other = sumByDay(there, thirst.length);
  let sum = 0;
  for (let d = 0; d < here.length; d++) sum += Math.max(0, here[d]! - other[d]! - AWAY_HARM_PER_DAY);
  return sum;
}

const OPENNESS = { open: 3, "roof-edge": 2, roofed: 1, indoors: 0 } as const;

/** Whether a spot is shelter from another: less open by its kind, or as open with less sky; never out of doors from within. */
export function isMoreSheltered(spot: Spot, from: Spot): boolean {
  if (spot === from) return false;
  const less = OPENNESS[from.kind] - OPENNESS[spot.kind];
  return less > 0 || (less === 0 && (spot.kind !== "open" || spot.skyFrac <= from.skyFrac));
}

/** Whether anything here could be worth a carry at all. */
function mayBeThreatened(context: PlanContext, here: Standing): boolean {
  return sumOf(here.bySpot) + wetHarm(here) >= LEAST_SAVING * tripHarm(context.settings);
}

function wetHarm({ wet }: Standing): number {
  return Object.values(wet).reduce((sum, byDay) => sum + totalHarm({ byDay }), 0);
}

/** No carry can be worth less than this many trips: the lightest pot, a few steps, there and back. */
const LEAST_SAVING = 0.25;

/** Whether the pot goes in at all, room being left. */
export function fits({ room }: Spot, { vessel, pot }: PotNow): boolean {
  return room?.maxHeightCm === undefined || vessel.heightCm + pot.plantHeightCm <= room.maxHeightCm;
}

/** In the shade weeks after planting. */
function isFresh({ aftercare }: PotNow, nowUtcMs: number): boolean {
  return aftercare !== null && aftercare.shadeUntilUtcMs > nowUtcMs;
}
