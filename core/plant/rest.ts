import { dayOfYear } from "../site/day-of-year.ts";
import type { GroupValues } from "./group.ts";
import { threeNightC, type Warmth } from "./warmth.ts";

export type RestWhy =
  | "warm-growth"
  | "cool-nights"
  | "fixed-rest"
  | "summer-rest"
  | "reported-leafless"
  | "reported-growth"
  | "weather-unknown";

/** How far a plant is at rest, and what decided it. */
export interface RestNow {
  readonly restingShareFrac: number;
  readonly why: RestWhy;
}

/** What the grower last saw of the leaves. */
export interface LeafReport {
  readonly state: "in-leaf" | "leafless" | "new-growth";
  readonly ageDays: number;
}

/** Cool growers begin to rest at the first mean of days, and rest wholly at the second, °C. Chosen by us. */
const SUMMER_REST_C = [24, 28] as const;
/** Where no night is given at which water stops, rest is whole this far below the one at which it is cut, K. Chosen. */
const WHOLE_REST_BELOW_K = 6;
/** A report holds in full for the first number of days and has faded at the second. Chosen by us. */
const REPORT_DAYS = [30, 60] as const;

/** Rest from warmth and season, then moved by what the grower saw, as far as that is fresh. */
export function restNow(input: {
  values: GroupValues;
  warmth: Warmth;
  latDeg: number;
  utcMs: number;
  leaf: LeafReport | null;
}): RestNow {
  const climate = climateRest(input);
  const report = reportedRest(input.leaf, input.values);
  if (input.leaf === null || report === null) return climate;
  const trust = 1 - ramp(input.leaf.ageDays, REPORT_DAYS);
  if (trust === 0) return climate;
  const share = climate.restingShareFrac + trust * (report.restingShareFrac - climate.restingShareFrac);
  return { restingShareFrac: share, why: report.why };
}

function climateRest(input: { values: GroupValues; warmth: Warmth; latDeg: number; utcMs: number }): RestNow {
  const { values, warmth } = input;
  const nightC = threeNightC(warmth);
  if (Number.isNaN(nightC)) return { restingShareFrac: 0, why: "weather-unknown" };
  const wholeC = values.stopWaterNightC ?? values.cutWaterNightC - WHOLE_REST_BELOW_K;
  const cool = 1 - ramp(nightC, [wholeC, values.cutWaterNightC]);
  const fixed = values.fixedRest ? winterShare(input) : 0;
  const summer =
    values.growth === "cool" && !Number.isNaN(warmth.meanC) ? ramp(warmth.meanC, SUMMER_REST_C) : 0;
  const most = Math.max(cool, fixed, summer);
  if (most < 0.05) return { restingShareFrac: most, why: "warm-growth" };
  const why = most === fixed ? "fixed-rest" : most === summer ? "summer-rest" : "cool-nights";
  return { restingShareFrac: most, why };
}

function reportedRest(leaf: LeafReport | null, values: GroupValues): RestNow | null {
  if (leaf === null) return null;
  if (leaf.state === "new-growth") return { restingShareFrac: 0.1, why: "reported-growth" };
  if (leaf.state === "in-leaf") {
    return values.leaflessIsRest ? { restingShareFrac: 0.2, why: "reported-growth" } : null;
  }
  return values.leaflessIsRest ? { restingShareFrac: 1, why: "reported-leafless" } : null;
}

/** 1 in the three coldest months of the hemisphere, 0 in the warm half of the year, between in between. */
function winterShare(input: { latDeg: number; utcMs: number }): number {
  const angle = (2 * Math.PI * (dayOfYear(input.utcMs) - 15)) / 365.25;
  const coldness = Math.cos(angle) * (input.latDeg < 0 ? -1 : 1);
  return ramp(coldness, [0.1, 0.7]);
}

/** 0 up to the first bound, 1 from the second, straight in between. */
function ramp(value: number, [from, to]: readonly [number, number]): number {
  return Math.min(1, Math.max(0, (value - from) / (to - from)));
}
