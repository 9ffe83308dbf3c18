/**
 * Usable water left that goes with what a hand tells, and how widely such reports scatter. Chosen by us; a hand says
 * light or heavy, hardly more.
 */
const FEEL = {
  light: { leftFrac: 0.12, sdFrac: 0.22 },
  middling: { leftFrac: 0.45, sdFrac: 0.25 },
  heavy: { leftFrac: 0.9, sdFrac: 0.22 },
} as const;
/** A finger finds mix dry that still holds this share of its usable water or less. Chosen by us. */
const DRY_TO_TOUCH = { besidesFrac: 1.1, sdFrac: 0.25 } as const;

/**
 * How likely each particle makes what the hand found, 1 where it fits best.
 *
 * @param leftFrac  share of usable water left, by particle
 */
export function feelLikelihood(
  leftFrac: Float64Array,
  check: { dryToCm?: number; feel?: keyof typeof FEEL; depthCm: number },
): Float64Array {
  const likelihood = new Float64Array(leftFrac.length).fill(1);
  if (check.feel !== undefined) multiply(likelihood, leftFrac, FEEL[check.feel]);
  if (check.dryToCm !== undefined) {
    const dryShare = Math.min(1, (DRY_TO_TOUCH.besidesFrac * check.dryToCm) / check.depthCm);
    multiply(likelihood, leftFrac, { leftFrac: 1 - dryShare, sdFrac: DRY_TO_TOUCH.sdFrac });
  }
  return likelihood;
}

function multiply(
  likelihood: Float64Array,
  leftFrac: Float64Array,
  sign: { readonly leftFrac: number; readonly sdFrac: number },
): void {
  for (let k = 0; k < likelihood.length; k++) {
    likelihood[k]! *= Math.exp(-0.5 * ((leftFrac[k]! - sign.leftFrac) / sign.sdFrac) ** 2);
  }
}
