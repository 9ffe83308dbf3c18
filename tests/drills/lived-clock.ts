/** A clock that runs only while the house lives: a slow machine then costs a drill time, and the house no mornings. */
export interface LivedClock {
  nowUtcMs(): number;
  /** What the next life is told of it: its clock is slower by so many times where the machine is slow. */
  forNextLife(slowTimes: number): string;
  /** A life has begun at a real instant. */
  lives(startMs: number): void;
  /** The life is over, and the house lies dead for a while by its own clock. */
  stops(downMs: number): void;
}

/** @param of  `speed` is how many times faster than ours it runs */
export function livedClock(of: { startUtcMs: number; speed: number }): LivedClock {
  let simulatedMs = of.startUtcMs;
  let { speed } = of;
  let livesSinceMs: number | null = null;
  const nowUtcMs = () =>
    livesSinceMs === null ? simulatedMs : Math.round(simulatedMs + (Date.now() - livesSinceMs) * speed);
  return {
    nowUtcMs,
    forNextLife(slowTimes) {
      speed = of.speed / slowTimes;
      return JSON.stringify({ simulatedMs, speed });
    },
    lives(startMs) {
      livesSinceMs = startMs;
    },
    stops(downMs) {
      simulatedMs = nowUtcMs() + downMs;
      livesSinceMs = null;
    },
  };
}
