/** A clock that runs only while the house lives: a slow machine then costs a drill time, and the house no mornings. */
export interface LivedClock {
  nowUtcMs(): number;
  /** What the next life is told of it. */
  forNextLife(): string;
  /** A life has begun at a real instant. */
  lives(startMs: number): void;
  /** The life is over, and the house lies dead for a while by its own clock. */
  stops(downMs: number): void;
}

/** @param of  `speed` is how many times faster than ours it runs */
export function livedClock(of: { startUtcMs: number; speed: number }): LivedClock {
  let simulatedMs = of.startUtcMs;
  let livesSinceMs: number | null = null;
  const nowUtcMs = () =>
    livesSinceMs === null ? simulatedMs : Math.round(simulatedMs + (Date.now() - livesSinceMs) * of.speed);
  return {
    nowUtcMs,
    forNextLife: () => JSON.stringify({ simulatedMs, speed: of.speed }),
    lives(startMs) {
      livesSinceMs = startMs;
    },
    stops(downMs) {
      simulatedMs = nowUtcMs() + downMs;
      livesSinceMs = null;
    },
  };
}
