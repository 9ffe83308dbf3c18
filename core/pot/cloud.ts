/**
 * Some 51 possible versions of one pot. Columns by particle; every particle is as likely as its weight.
 */
export interface Cloud {
  readonly size: number;
  /** Sum is 1. */
  readonly weightFrac: Float64Array;
  /** Times the library's capacity, thirst, wall loss, rain catch. */
  readonly capacityFactor: Float64Array;
  readonly thirstFactor: Float64Array;
  readonly wallFactor: Float64Array;
  readonly catchFactor: Float64Array;
  /** Times the library's surface evaporation; 1 when left out. */
  readonly surfaceFactor?: Float64Array;
  /** What the scale shows beyond the library's dry mass: plant, and error of the dry mass. 0 when left out. */
  readonly tareKg?: Float64Array;
  /** State at the instant the cloud is for. */
  readonly waterMl: Float64Array;
  /** Depletion of the surface layer that evaporates, mm. */
  readonly surfaceDepletionMm: Float64Array;
  /** Water standing in the saucer. */
  readonly saucerMl: Float64Array;
  /** Drought without a break so far, in the time that the plant stands; nought when left out. */
  readonly droughtFrac?: Float64Array;
  /** How far off the point is from which transpiration falls, share of usable water gone; nought when left out. */
  readonly depletionOff?: Float64Array;
}
