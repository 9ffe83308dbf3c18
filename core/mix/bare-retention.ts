import type { RetentionCurve } from "./curve.ts";
import type { Retention } from "./retention.ts";
import { unusableFracOf } from "./unusable-water.ts";

/** Retention of a material known by its curve alone: every pore it has fills. */
export function bareRetention(curve: RetentionCurve): Retention {
  return {
    terms: [{ shareFrac: 1, curve }],
    totalPorosityFrac: curve.saturatedFrac,
    saturatedFrac: curve.saturatedFrac,
    unusableFrac: unusableFracOf(curve),
  };
}
