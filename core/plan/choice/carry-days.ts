/** Which days a pot spends where, by plan day: true = under cover (the other spot), false = at home. */
export interface CarryDays {
  /** Carries within the horizon. */
  readonly carries: number;
  readonly away: readonly boolean[];
  /** Expected harm over the horizon. */
  readonly harm: number;
}

/** Most carries thought of within one horizon. */
const MOST_CARRIES = 6;

/**
 * For each number of carries, the days away that cost least harm; by dynamic programming over days, so that a wet
 * week is one carry in and one carry out wherever that costs less than seven of each.
 * @param homeHarm, awayHarm  expected harm of each day at either place
 * @param startsAway  where the pot stands before the first carry
 */
export function carryDays(input: {
  homeHarm: ArrayLike<number>;
  awayHarm: ArrayLike<number>;
  startsAway: boolean;
}): CarryDays[] {
  const { homeHarm, awayHarm, startsAway } = input;
  const dayCount = homeHarm.length;
  const placeAfter = (carries: number) => startsAway !== (carries % 2 === 1);
  const harmOn = (d: number, carries: number) => (placeAfter(carries) ? awayHarm[d]! : homeHarm[d]!);
  // best[k]: least harm up to a day with k carries made; from[d][k]: whether the k-th was made on day d.
  let best = [0, ...Array<number>(MOST_CARRIES).fill(Number.POSITIVE_INFINITY)];
  const carriedOn: boolean[][] = [];
  for (let d = 0; d < dayCount; d++) {
    const moved = best.map((_, k) => k > 0 && best[k - 1]! < best[k]!);
    best = best.map((harm, k) => (moved[k] ? best[k - 1]! : harm) + harmOn(d, k));
    carriedOn.push(moved);
  }
  return best.flatMap((harm, carries) =>
    Number.isFinite(harm) ? [{ carries, harm, away: daysBack({ carriedOn, carries, placeAfter }) }] : [],
  );
}

function daysBack(input: {
  carriedOn: readonly boolean[][];
  carries: number;
  placeAfter: (carries: number) => boolean;
}): boolean[] {
  const away: boolean[] = [];
  let k = input.carries;
  for (let d = input.carriedOn.length - 1; d >= 0; d--) {
    away[d] = input.placeAfter(k);
    if (input.carriedOn[d]![k]) k--;
  }
  return away;
}
