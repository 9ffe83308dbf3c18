import type { SpotForcing } from "../site/forcing.ts";

/** Where a pot stands over the coming hours: each stretch begins at its hour and lasts to the next. */
export interface Stretch {
  readonly fromHour: number;
  readonly forcing: SpotForcing;
}

/** Water given in the hour, the same to every particle; Infinity means until it runs through. */
export interface Pour {
  readonly hour: number;
  readonly waterMl: number;
}

/** A cloud rolled out: index = hour * size + particle, state at the END of the hour. */
export interface Trajectory {
  readonly hourCount: number;
  readonly size: number;
  readonly waterMl: Float64Array;
  /** Total that ran out at the base in the hour. */
  readonly drainedMl: Float64Array;
  /** 1 while the layer at the base is without air, else 0. */
  readonly wetBase: Uint8Array;
  /** Rain and can that reached the mix in the hour. */
  readonly wettedMl: Float64Array;
}
