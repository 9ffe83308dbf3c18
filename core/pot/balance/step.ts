/** One hour of one tank; made once a run and moved on by the hour, so that nothing is allocated in between. */
export interface Step {
  readonly et0Mm: Float64Array;
  readonly rainMm: Float64Array;
  /** 1 when each particle has its own course of weather, 0 when all share one. */
  readonly stride: 0 | 1;
  /** First index of the hour in the weather columns. */
  at: number;
  /** The same for the rain, which may be each particle's own where the rest is shared. */
  readonly rainStride: 0 | 1;
  rainAt: number;
  /** Given to every particle in this hour; Infinity means until it runs through. */
  pourMl: number;
  /** Whether rain or the can brought water in this hour. */
  tookIn: boolean;

  /** Whether the hours are written anywhere. */
  readonly tells: boolean;
  /** Where the hour is written, and the index of its first particle. */
  readonly waterMl: Float64Array;
  readonly drainedMl: Float64Array;
  readonly wetBase: Uint8Array;
  readonly wettedMl: Float64Array;
  out: number;
}
