/**
 * One pot as the hourly balance sees it: two stores, the layer that evaporates and the body beneath, each told by
 * what is missing from it. Columns by particle; mL unless the name says otherwise.
 *
 * Missing rather than held, because rain makes good the surface first and the body after it, and because each loss is
 * then an addition: content = capacity - missing at the surface - missing in the body.
 */
export interface TankColumns {
  readonly size: number;
  /** Water after draining. */
  readonly capacityMl: Float64Array;
  /** Content above which the base is without air; Infinity when the drained base has air. */
  readonly wetAboveMl: Float64Array;

  /** Most that can go missing at the surface, to air-dry; the falling stage bends at half of it. */
  readonly surfaceMostMl: Float64Array;
  /** Of that, what roots can take. */
  readonly surfaceUsableMl: Float64Array;
  /** Surface demand, mL per mm of ET0. */
  readonly surfaceMlPerMm: Float64Array;
  /** Sorptivity of the mix, squared, on this surface: mL2/h. */
  readonly sorptionMl2PerH: Float64Array;
  /** Share of what is left at the surface that goes in an hour beyond the bend. */
  readonly lateShare: Float64Array;
  /** Rise from a full body to a dry surface, mL/h. */
  readonly riseMlPerH: Float64Array;

  readonly bodyMostMl: Float64Array;
  readonly bodyUsableMl: Float64Array;
  /** Share of the body's content that leaves through the wall, per mm of ET0. */
  readonly wallPerMm: Float64Array;

  /** Transpiration of a plant that lacks nothing, mL per mm of ET0. */
  readonly thirstMlPerMm: Float64Array;
  /** 1 / (usable water beyond which transpiration does not fall), and 1 / the most that can go missing. */
  readonly perSurfaceUsable: Float64Array;
  readonly perBodyUsable: Float64Array;
  readonly perSurfaceMost: Float64Array;
  readonly perBodyMost: Float64Array;
  /** Share of the roots in the surface layer. */
  readonly surfaceRootsFrac: number;

  /** Water that enters for each mm of rain at the rim. */
  readonly catchMlPerMm: Float64Array;
  readonly saucerMostMl: number;
  /** Content below which the dry mix sheds water, and what it then takes the body up to at first; 0 when it does not. */
  readonly shedsBelowMl: Float64Array;
  readonly shedsMissingMl: Float64Array;
  /** Grit or stone on top: demand e becomes e / (coverBase + coverPerMl e); 1 and 0 without. */
  readonly coverBase: number;
  readonly coverPerMl: Float64Array;

  /** State: missing at the surface, missing in the body, standing in the saucer. */
  readonly surfaceMl: Float64Array;
  readonly bodyMl: Float64Array;
  readonly saucerMl: Float64Array;

  /** Totals since the tank was made, so that every millilitre can be accounted for. */
  readonly enteredMl: Float64Array;
  readonly drainedMl: Float64Array;
  readonly evaporatedMl: Float64Array;
  readonly wallLossMl: Float64Array;
  readonly transpiredMl: Float64Array;
}

/** A tank made ready to run. */
export interface Tank extends TankColumns {
  /** What the losses read, once more, laid out for speed. */
  readonly rows: Float64Array;
}

/** Content of one particle, the saucer left out. */
export function contentMl(tank: Tank, particle: number): number {
  return tank.capacityMl[particle]! - tank.surfaceMl[particle]! - tank.bodyMl[particle]!;
}
