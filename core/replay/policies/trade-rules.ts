import type { Stage } from "../world/known-pot.ts";
import { roofOf, roomOf } from "./calendar-cover.ts";
import { hasFreshCut } from "./fresh-cut.ts";
import type { MorningDeed, MorningView, Policy, PotView } from "./policy.ts";

/** Degrees over the line of damage at which a careful grower carries in, and those at which nothing is feared. */
const IN_MARGIN_C = 2;
const OUT_MARGIN_C = 4;
/** Rain of a day from which wet or freshly worked plants that store water go under the roof, mm, and its chance. */
const SOAKING_MM = 15;
const LIKELY_FRAC = 0.5;
/** Rain that does the can's work, mm over two days, and its chance. */
const RAIN_DOES_MM = 5;
const RAIN_SURE_FRAC = 0.6;
/** Finger for leafy plants, cm. */
const LEAFY_DRY_CM = 2;
/** Resting plants that store water are given a drink so rarely, days. */
const REST_DRINK_DAYS = 28;

/**
 * What careful growers do, all of it common practice: lift every pot each morning; water when light (leafy plants when the
 * top is dry), not before likely rain, not in cold nights, not on fresh cuts; in before cold and soaking rain, out when
 * three nights look safe.
 */
export const tradeRules: Policy = {
  id: "trade-rules",
  begin: (stage) => ({ morning: (view) => view.pots.map((pot) => careFor(stage, view, pot)) }),
};

function careFor(stage: Stage, view: MorningView, pot: PotView): MorningDeed {
  const wanted = placeFor(stage, view, pot);
  return {
    pourMl: wantsWater(stage, view, pot) ? Number.POSITIVE_INFINITY : 0,
    toSpot: wanted === pot.spot ? null : wanted,
  };
}

function placeFor(stage: Stage, view: MorningView, pot: PotView): number {
  const { values, homeSpot } = pot.known;
  const [tonight = 99] = view.outlook.coldestC;
  const coming = Math.min(...view.outlook.coldestC);
  if (tonight < values.damageC + IN_MARGIN_C) return roomOf(stage, pot);
  const room = roomOf(stage, pot);
  if (pot.spot === room && room !== homeSpot && coming < values.damageC + OUT_MARGIN_C) return room;
  return wantsRoof(view, pot) ? roofOf(stage, pot) : homeSpot;
}

/** A soaking on a fresh cut or on a pot that is still heavy, for plants that store water. */
function wantsRoof(view: MorningView, pot: PotView): boolean {
  if (pot.known.values.leafy) return false;
  const chance = Math.max(...view.outlook.wetShareFrac.slice(0, 2));
  if (hasFreshCut(pot)) return chance > 0.1;
  const most = Math.max(...view.outlook.rainMm.slice(0, 2));
  return most >= SOAKING_MM && chance >= LIKELY_FRAC && pot.feel() === "heavy";
}

function wantsWater(stage: Stage, view: MorningView, pot: PotView): boolean {
  const { leafy, stopWaterNightC, cutWaterNightC } = pot.known.values;
  if (hasFreshCut(pot)) return false;
  const dry = leafy ? pot.dryToCm() >= LEAFY_DRY_CM : pot.feel() === "light";
  if (!dry) return false;
  if (stage.spots[pot.spot]!.kind === "open" && rainWillDo(view)) return false;
  const coldest = Math.min(...view.outlook.coldestC);
  const isOutside = stage.spots[pot.spot]!.kind !== "indoors";
  if (stopWaterNightC !== null && isOutside && coldest < stopWaterNightC) return false;
  const rests = !leafy && (isOutside ? coldest < cutWaterNightC : view.month < 2 || view.month > 9);
  return !rests || pot.sinceWaterDays >= REST_DRINK_DAYS;
}

function rainWillDo({ outlook }: MorningView): boolean {
  const [today = 0, tomorrow = 0] = outlook.rainMm;
  const chance = Math.max(...outlook.wetShareFrac.slice(0, 2));
  return today + tomorrow >= RAIN_DOES_MM && chance >= RAIN_SURE_FRAC;
}
