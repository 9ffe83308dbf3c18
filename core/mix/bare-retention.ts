import type { RetentionCurve } from "./curve.ts";
import type { Retention } from "./retention.ts";
import { unusableFracOf } from "./unusable-water.ts";

/** One for each curve, so that what is found out about it is found out once. */
const KNOWN = new WeakMap<RetentionCurve, Retention>();

/** Retention of a material known by its curve alone: every pore it has fills. */
export function bareRetention(curve: RetentionCurve): Retention {
  const known = KNOWN.get(curve);
  if (known !== undefined) return known;
  const made = {
    terms: [{ shareFrac: 1, curve }],
    totalPorosityFrac: curve.saturatedFrac,
    saturatedFrac: curve.saturatedFrac,
    unusableFrac: unusableFracOf(curve),
  };
  KNOWN.set(curve, made);
  return made;
}
