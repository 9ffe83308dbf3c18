import { seededRandom, seedFrom } from "../../weather/seeded-random.ts";

/** Lead days that are drawn, 0 to 10; what lies beyond has the error of the last. */
export const LEAD_DAYS = 11;
/** Correlation of errors of one valid day with the next, and of one issue with the issue a day later. [NWSCITIES2022] */
const DAY_TO_DAY = 0.25;
const ISSUE_TO_ISSUE = 0.85;

/** Standard normal errors by lead day and valid day. */
export interface ErrorProcess {
  at(leadDay: number, day: number): number;
}

/**
 * Errors of a forecaster who mends yesterday's forecast rather than making a new one: from each issue to the next the
 * errors of a valid day go together by 0.85, and those of neighbouring days of one issue by 0.25. [NWSCITIES2022, our
 * reckoning: 0.71 to 0.94, and 0.21 to 0.32 in Seattle and New York]
 *
 * Each day's numbers hang on the seed and the day alone, so that a longer span has the same ones.
 */
export function errorProcess(of: {
  seed: number;
  stream: number;
  firstDayNumber: number;
  dayCount: number;
}): ErrorProcess {
  const { dayCount } = of;
  const values = new Float64Array(LEAD_DAYS * dayCount);
  const last = new Float64Array(LEAD_DAYS);
  for (let day = -RUN_IN_DAYS; day < dayCount; day++) {
    const random = seededRandom(seedFrom([of.seed, of.stream, of.firstDayNumber + day]));
    let coarser = 0;
    for (let lead = LEAD_DAYS - 1; lead >= 0; lead--) {
      const fresh = random.normal();
      last[lead] = DAY_TO_DAY * last[lead]! + Math.sqrt(1 - DAY_TO_DAY ** 2) * fresh;
      const own = last[lead]!;
      coarser =
        lead === LEAD_DAYS - 1 ? own : ISSUE_TO_ISSUE * coarser + Math.sqrt(1 - ISSUE_TO_ISSUE ** 2) * own;
      if (day >= 0) values[lead * dayCount + day] = coarser;
    }
  }
  return { at: (leadDay, day) => values[Math.min(LEAD_DAYS - 1, leadDay) * dayCount + day]! };
}

/** 0.25 to the sixth is nothing. */
const RUN_IN_DAYS = 6;

/** Weight of the cube that gives a normal the tails of real errors: kurtosis 4.5, where 3.7 to 4.9 was found. */
const CUBE = 0.05;
const CUBE_SD = Math.sqrt(1 + 6 * CUBE + 15 * CUBE ** 2);

/** A standard normal with somewhat heavy tails, variance kept. [NWSCITIES2022, our reckoning] */
export function heavyTailed(z: number): number {
  return (z + CUBE * z ** 3) / CUBE_SD;
}
