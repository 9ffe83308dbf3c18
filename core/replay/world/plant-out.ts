import type { RootWork } from "../../journal/entry.ts";
import { dryDays } from "../../plant/care-days.ts";
import { settleDay } from "./close-day.ts";
import type { WorldClock } from "./world-clock.ts";
import type { WorldPot } from "./world-pot.ts";
import type { WorldState } from "./world-state.ts";

/** Usable water left in dry and in moist mix, as the planner takes them. */
const LEFT_FRAC = { dry: 0.08, moist: 0.45 } as const;
const LONG_AGO_H = 1e6;

interface World {
  readonly clock: WorldClock;
  readonly pot: WorldPot;
}

/** A pot that has long been settled, dry or moist, at an hour. */
export function settledState(
  world: World,
  at: { hour: number; spot: number; mixWet: "dry" | "moist" },
): WorldState {
  const { pot, clock } = world;
  const leafC = clock.spots[at.spot]!.plantTempC[at.hour]!;
  const state: WorldState = {
    spot: at.spot,
    letsInFrac: 1,
    coldLeftFrac: 1,
    shieldUntilHour: -1,
    upperMl: 0,
    lowerMl: 0,
    droughtShare: 0,
    wetHours: 0,
    coldNights: 0,
    roots: "undisturbed",
    needDays: 0,
    healedDays: LONG_AGO_H,
    closed: true,
    worstWetting: 0,
    plantedHour: at.hour - LONG_AGO_H,
    dayRainMm: 0,
    nightMinC: Number.POSITIVE_INFINITY,
    lightMjPerM2: 0,
    tipRatio: 0,
    warmthSumC: 0,
    warmthHours: 0,
    lastNightC: leafC,
    nightBeforeC: leafC,
    threeNightC: leafC,
    meanC: leafC,
    restingFrac: 0,
    refillFrac: 0,
    uptakeFrac: 0,
    tipMPerS: 1,
    tender: false,
  };
  setUsableLeft(pot, state, LEFT_FRAC[at.mixWet]);
  settleDay(world, state, at.hour);
  return state;
}

/** Repots into the same mix and vessel: leafy plants are watered in, the others go into dry mix. */
export function repot(world: World, state: WorldState, of: { hour: number; roots: RootWork }): void {
  const { pot } = world;
  const { leafy } = pot.known.values;
  state.roots = of.roots;
  state.needDays = dryDays({ roots: of.roots, leafy }, [pot.known.pot.dryDays]);
  state.healedDays = 0;
  state.closed = state.needDays === 0;
  state.worstWetting = 0;
  state.plantedHour = of.hour;
  setUsableLeft(pot, state, leafy ? 1 : LEFT_FRAC.dry);
  settleDay(world, state, of.hour);
}

function setUsableLeft(pot: WorldPot, state: WorldState, leftFrac: number): void {
  state.upperMl = pot.upperUnusableMl + leftFrac * (pot.upperFullMl - pot.upperUnusableMl);
  state.lowerMl = pot.lowerUnusableMl + leftFrac * (pot.lowerFullMl - pot.lowerUnusableMl);
}
