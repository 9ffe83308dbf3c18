/**
 * Hour columns with every value known: what the ladder makes of `Weather`. Hour-major, members innermost,
 * index = hour * memberCount + member; hour i ENDS at `startUtcMs + (i + 1) h`.
 */
export interface HoursReady {
  readonly startUtcMs: number;
  readonly hourCount: number;
  readonly memberCount: number;
  readonly tempC: Float64Array;
  readonly dewPointC: Float64Array;
  readonly rainMm: Float64Array;
  /** At 10 m. */
  readonly windMPerS: Float64Array;
  readonly radiationMjPerM2: Float64Array;
  readonly cloudFrac: Float64Array;
  /** By hour only. */
  readonly gustMPerS: Float64Array;
  /** WMO code 4677, by hour only; -1 where the feed gave none. */
  readonly weatherCode: Float64Array;
  /** Set where the rain is a model's word for what fell and not a gauge's; absent where it counts as it stands. */
  readonly rainDoubt?: RainDoubt;
}

/** Rain gone by that nobody measured where the pots stand. */
export interface RainDoubt {
  /** 1 in the hours that a reading of the grower's gauge has settled; null without any. */
  readonly gauged: Uint8Array | null;
}
