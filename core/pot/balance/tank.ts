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

  readonly bodyMostMl: Float64Array;
  readonly bodyUsableMl: Float64Array;
  /** Share of the body's content that leaves through the wall, per mm of ET0. */
  readonly wallPerMm: Float64Array;

  /** Transpiration of a plant that lacks nothing, mL per mm of ET0. */
  readonly thirstMlPerMm: Float64Array;
  /** Share of usable water that can go before transpiration begins to fall. */
  readonly depletionFrac: Float64Array;
  /** Share of the roots in the surface layer. */
  readonly surfaceRootsFrac: number;

  /** Water that enters for each mm of rain at the rim. */
  readonly catchMlPerMm: Float64Array;
  readonly saucerMostMl: number;
  /** Content below which the dry mix sheds water (0: never), and the most that then stays missing from the body. */
  readonly shedsBelowMl: Float64Array;
  readonly shedsMissingMl: Float64Array;
  /** Grit or stone on top: demand e becomes e / (coverBase + coverPerMl e); 1 and 0 without. */
  readonly coverBase: number;
  readonly coverPerMl: number;

  /** State: missing at the surface, missing in the body, standing in the saucer. */
  readonly surfaceMl: Float64Array;
  readonly bodyMl: Float64Array;
  readonly saucerMl: Float64Array;
}

/** Totals by particle since the account was opened, so that every millilitre can be told apart. */
export interface Account {
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
  /** Null when nobody asks where the water went, which saves time. */
  readonly account: Account | null;
  /** The columns that are its own, for the next tank to be written over it. */
  readonly block?: readonly Float64Array[];
}

/** Content of one particle, the saucer left out. */
export function contentMl(tank: Tank, particle: number): number {
  return tank.capacityMl[particle]! - tank.surfaceMl[particle]! - tank.bodyMl[particle]!;
}

/** An account with nothing in it yet. */
export function openAccount(size: number): Account {
  const column = () => new Float64Array(size);
  return {
    enteredMl: column(),
    drainedMl: column(),
    evaporatedMl: column(),
    wallLossMl: column(),
    transpiredMl: column(),
  };
}
