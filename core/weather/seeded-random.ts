/** A stream of repeatable numbers: the same seed gives the same stream. */
export interface RandomStream {
  /** Uniform, 0 included, 1 excluded. */
  uniform(): number;
  /** Standard normal. */
  normal(): number;
}

/**
 * One seed from several whole numbers, so that each purpose, day or pot has a stream of its own that does not
 * shift when another is added.
 */
export function seedFrom(parts: readonly number[]): number {
  let hash = 0x9e3779b9;
  for (const part of parts) hash = scramble(hash ^ scramble(part | 0));
  return hash >>> 0;
}

/** A 32-bit stream of small state (Weyl sequence through a mixing function); not for secrets. */
export function seededRandom(seed: number): RandomStream {
  if (!Number.isFinite(seed)) throw new RangeError(`seed ${seed} is not a finite number`);
  let state = scramble(Math.trunc(seed) | 0);
  let spare = Number.NaN;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    return (scramble(state) >>> 0) / 4294967296;
  };
  const normal = (): number => {
    if (!Number.isNaN(spare)) {
      const kept = spare;
      spare = Number.NaN;
      return kept;
    }
    // Box and Muller: one pair of uniforms gives one pair of normals. 1 - u keeps the logarithm finite.
    const radius = Math.sqrt(-2 * Math.log(1 - uniform()));
    const angle = 2 * Math.PI * uniform();
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
  return { uniform, normal };
}

function scramble(value: number): number {
  let mixed = value | 0;
  mixed = Math.imul(mixed ^ (mixed >>> 16), 0x21f0aaad);
  mixed = Math.imul(mixed ^ (mixed >>> 15), 0x735a2d97);
  return mixed ^ (mixed >>> 15);
}
