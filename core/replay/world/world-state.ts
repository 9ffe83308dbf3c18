import type { RootWork } from "../../journal/entry.ts";

/** A pot of the world at an instant; all that its future hangs on. Copied often, so flat. */
export interface WorldState {
  spot: number;
  /** A cover over the mix or a tilt: rain it lets in, share of the harm of cold that it leaves, and until which hour. */
  letsInFrac: number;
  coldLeftFrac: number;
  shieldUntilHour: number;
  upperMl: number;
  lowerMl: number;
  /** Drought without a break, as a share of what the plant stands; hours without air at the base. */
  droughtShare: number;
  wetHours: number;
  /** Fully wet nights at the group's limit. */
  coldNights: number;
  /** Aftercare: days at 20 °C needed and passed, whether the cut has closed, worst wetting since planting. */
  roots: RootWork;
  needDays: number;
  healedDays: number;
  closed: boolean;
  worstWetting: number;
  plantedHour: number;
  /** Rain since the last closing of a day, mm. */
  dayRainMm: number;
  /** The day so far: lowest leaf, light, strongest gust over the tipping speed, sum and count of leaf temperature. */
  nightMinC: number;
  lightMjPerM2: number;
  tipRatio: number;
  warmthSumC: number;
  warmthHours: number;
  /** The two nights before, the mean of three at the last closing, and the mean of ten days or so. */
  lastNightC: number;
  nightBeforeC: number;
  threeNightC: number;
  meanC: number;
  /** Decided at the closing of a day. */
  restingFrac: number;
  refillFrac: number;
  uptakeFrac: number;
  tipMPerS: number;
  tender: boolean;
}

export function copyState(state: WorldState): WorldState {
  return { ...state };
}
