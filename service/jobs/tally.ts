/** Counts since the start and the instants of the last good ones, for whoever watches from outside. */
export interface Tally {
  readonly counts: Map<string, number>;
  readonly lastUtcMs: Map<string, number>;
  /** One more of what the name says, e.g. "pull.done". */
  count(name: string, atUtcMs?: number): void;
}

export function newTally(): Tally {
  const counts = new Map<string, number>();
  const lastUtcMs = new Map<string, number>();
  return {
    counts,
    lastUtcMs,
    count(name, atUtcMs) {
      counts.set(name, (counts.get(name) ?? 0) + 1);
      if (atUtcMs !== undefined) lastUtcMs.set(name, atUtcMs);
    },
  };
}
