import type { RootWork } from "../../journal/entry.ts";
import type { MixId } from "../../mix/mix.ts";
import type { MixInVessel } from "../../mix/mix-in-vessel.ts";
import type { Care } from "../../plant/aftercare.ts";
import type { RestNow } from "../../plant/rest.ts";
import { NO_WARMTH, type Warmth } from "../../plant/warmth.ts";
import type { Problem } from "../../problem.ts";
import type { SpotId } from "../../site/spot.ts";
import type { Particles } from "../particles.ts";
import type { Vessel } from "../vessel.ts";

/** What a pot is planted in. */
export interface Planting {
  readonly plantedUtcMs: number;
  readonly vessel: Vessel;
  readonly mixId: MixId;
  readonly roots: RootWork;
  readonly inVessel: MixInVessel;
  readonly wetAboveFrac: number;
}

/**
 * All that a replay needs to go on from an instant: a checkpoint. Going on from it gives the same bytes as not having
 * stopped.
 */
export interface PotState {
  /** Whole hours up to here have been run. */
  readonly atUtcMs: number;
  readonly spotId: SpotId;
  readonly planting: Planting | null;
  readonly particles: Particles | null;
  readonly care: Care | null;
  /** Decided once a day: nothing is left to heal or to wait for. */
  readonly careOver: boolean;
  readonly warmth: Warmth;
  /** Decided once a day and after each report. */
  readonly rest: RestNow;
  /** Shares that transpiration is cut to by lost roots and cut shoots. */
  readonly rootsShareFrac: number;
  readonly shootsShareFrac: number;
  readonly leaf: { readonly state: "in-leaf" | "leafless" | "new-growth"; readonly atUtcMs: number } | null;
  readonly prunedUtcMs: number | null;
  readonly lastWateredUtcMs: number | null;
  /** Rain at the rim since the UTC day began, mm; a soaking rain is one that sums up. */
  readonly dayRainMm: number;
  /** To when the fading of what was learned is reckoned. */
  readonly fadedUtcMs: number;
  /** Hours without weather, or before anything was written down, since the content was last known. */
  readonly blindHours: number;
  /** Whole hour from which on the pot's water is written down; null when that is from its planting on. */
  readonly recordFromUtcMs: number | null;
  readonly doubts: readonly Problem[];
}

/** Before anything happened. */
export function stateAtFirst(first: { spotId: SpotId; atUtcMs: number }): PotState {
  return {
    ...first,
    planting: null,
    particles: null,
    care: null,
    careOver: false,
    warmth: NO_WARMTH,
    rest: { restingShareFrac: 0, why: "weather-unknown" },
    rootsShareFrac: 1,
    shootsShareFrac: 1,
    leaf: null,
    prunedUtcMs: null,
    lastWateredUtcMs: null,
    dayRainMm: 0,
    fadedUtcMs: first.atUtcMs,
    blindHours: 0,
    recordFromUtcMs: null,
    doubts: [],
  };
}
