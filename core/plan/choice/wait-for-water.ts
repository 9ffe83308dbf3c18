/**
 * How much dearer waiting must be than watering, in pours, before the can is fetched. Chosen by us: for less, a grower
 * would rather look again tomorrow.
 */
const WORTH_FETCHING_POURS = 0.3;

/** Costs of giving the next water on each morning from today on, before any harm of the water itself. */
export interface WaitCosts {
  /** By morning; the last is "not within the horizon". */
  readonly byMorning: readonly number[];
  /** The morning that costs least; 0 = today, when that is worth fetching the can for. */
  readonly best: number;
}

/**
 * When to water next. Waiting costs the thirst of the days until then. It saves the pour as far as rain does the work
 * meanwhile, and as far as the pot uses up what it still has: a pour a day too early is a part of a pour for nothing.
 * More rain makes waiting cheaper and never dearer, so it cannot bring watering forward.
 * @param thirstByDay  expected harm if no water is given
 * @param reliefByDay  share of the missing water that rain has brought by the end of each day, 0 to 1
 * @param usedByDay  what the pot has used by the end of each day, in pours
 */
export function waitForWater(input: {
  thirstByDay: ArrayLike<number>;
  reliefByDay: ArrayLike<number>;
  usedByDay: ArrayLike<number>;
  pourHarm: number;
}): WaitCosts {
  const { thirstByDay, reliefByDay, usedByDay, pourHarm } = input;
  const byMorning = [pourHarm];
  let thirst = 0;
  let best = 0;
  let least = pourHarm * (1 + WORTH_FETCHING_POURS);
  for (let d = 0; d < thirstByDay.length; d++) {
    thirst += thirstByDay[d]!;
    const saved = Math.min(1, reliefByDay[d]! + usedByDay[d]!);
    const cost = thirst + pourHarm * (1 - saved);
    byMorning.push(cost);
    if (cost >= least) continue;
    least = cost;
    best = d + 1;
  }
  return { byMorning, best };
}
