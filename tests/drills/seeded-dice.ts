export interface Dice {
  share(): number;
  whole(from: number, to: number): number;
}

/** Throws that a seed foretells (mulberry32, a common public-domain generator), so that a drill can be run again. */
export function seededDice(seed: number): Dice {
  let state = seed >>> 0;
  const share = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
  return { share, whole: (from, to) => from + Math.floor(share() * (to - from + 1)) };
}
