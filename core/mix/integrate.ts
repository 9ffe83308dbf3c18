// Nodes and weights of the 7-point Gauss and 15-point Kronrod rules on [-1, 1], half of each symmetric set.
const NODES = [
  0.9914553711208126, 0.9491079123427585, 0.8648644233597691, 0.7415311855993945, 0.5860872354676911,
  0.4058451513773972, 0.20778495500789848, 0,
];
const KRONROD = [
  0.022935322010529224, 0.06309209262997856, 0.10479001032225019, 0.14065325971552592, 0.1690047266392679,
  0.19035057806478542, 0.20443294007529889, 0.20948214108472782,
];
const GAUSS = [0, 0.1294849661688697, 0, 0.27970539148927664, 0, 0.3818300505051189, 0, 0.4179591836734694];

const DEEPEST_SPLIT = 40;

export interface Stretch {
  readonly from: number;
  readonly to: number;
  /** Where the function bends sharply; those outside the stretch are passed over. */
  readonly bends: readonly number[];
  /** Absolute error that is small enough. */
  readonly tolerance: number;
}

/**
 * Integral of a continuous function by Gauss-Kronrod rules on halves until each part's own error is small. [QUADPACK1983]
 * @throws RangeError where the function is not finite: its halves would never come to an end
 */
export function integrate(f: (x: number) => number, stretch: Stretch): number {
  const inside = stretch.bends.filter((x) => x > stretch.from && x < stretch.to).sort((a, b) => a - b);
  const ends = [...inside, stretch.to];
  let from = stretch.from;
  let sum = 0;
  for (const to of ends) {
    sum += refined(f, { from, to, tolerance: stretch.tolerance / ends.length, depth: 0 });
    from = to;
  }
  return sum;
}

interface Part {
  readonly from: number;
  readonly to: number;
  readonly tolerance: number;
  readonly depth: number;
}

function refined(f: (x: number) => number, part: Part): number {
  const middle = (part.from + part.to) / 2;
  const half = (part.to - part.from) / 2;
  const atMiddle = f(middle);
  let fine = KRONROD[7]! * atMiddle;
  let coarse = GAUSS[7]! * atMiddle;
  for (let i = 0; i < 7; i++) {
    const step = half * NODES[i]!;
    const pair = f(middle - step) + f(middle + step);
    fine += KRONROD[i]! * pair;
    coarse += GAUSS[i]! * pair;
  }
  if (!Number.isFinite(fine)) throw new RangeError(`no finite value between ${part.from} and ${part.to}`);
  const small = Math.abs(fine - coarse) * half <= part.tolerance;
  if (small || part.depth === DEEPEST_SPLIT) return fine * half;
  const next = { tolerance: part.tolerance / 2, depth: part.depth + 1 };
  return (
    refined(f, { ...next, from: part.from, to: middle }) + refined(f, { ...next, from: middle, to: part.to })
  );
}
