import { waterMlAtRest } from "../pot/hold-water.ts";
import type { Vessel } from "../pot/vessel.ts";
import { volumeMlBetween } from "../pot/vessel-shape.ts";
import { bareRetention } from "./bare-retention.ts";
import type { RetentionCurve } from "./curve.ts";
import { findRoot } from "./find-root.ts";

/** The cylinder to which `cupCapacityFrac` belongs. */
const CUP: Vessel = { shape: "round", topCm: 9, baseCm: 9, heightCm: 9, material: "plastic" };

/** What a drained cylinder 9 cm tall holds with a curve, share of its volume. */
export function cupCapacityFracOf(curve: RetentionCurve): number {
  const heldMl = waterMlAtRest({ retention: bareRetention(curve), vessel: CUP, suctionAtBaseCm: 0 });
  return heldMl / volumeMlBetween(CUP, { fromCm: 0, toCm: CUP.heightCm });
}

/**
 * A curve shaped like a relative's that holds a given capacity in the cup: its levels follow the figure, and the
 * suction at which it drains is set so that the cup comes out.
 */
export function curveThroughCup(of: {
  relative: RetentionCurve;
  saturatedFrac: number;
  cupCapacityFrac: number;
}): RetentionCurve {
  const { relative, saturatedFrac, cupCapacityFrac } = of;
  const residualFrac = (relative.residualFrac * cupCapacityFrac) / cupCapacityFracOf(relative);
  const curveAt = (logAlpha: number) => ({
    ...relative,
    residualFrac,
    saturatedFrac,
    alphaPerCm: Math.exp(logAlpha),
  });
  const logAlpha = findRoot((log) => cupCapacityFracOf(curveAt(log)) - cupCapacityFrac, {
    low: Math.log(1e-5),
    high: Math.log(1e3),
    tolerance: 1e-7,
  });
  return curveAt(logAlpha);
}

/** Water measured at a suction. */
export interface CurvePoint {
  readonly suctionCm: number;
  readonly waterFrac: number;
}

/**
 * The curve that passes closest to measured points, for a given saturated share: a search over the suction and the
 * steepness, narrowed four times; the residual share is linear and follows by least squares.
 */
export function curveThroughPoints(points: readonly CurvePoint[], saturatedFrac: number): RetentionCurve {
  let best = { logAlpha: Math.log(0.1), logN: Math.log(0.8) };
  let reach = { logAlpha: 4, logN: 2.4 };
  for (let round = 0; round < 6; round++) {
    best = bestNear({ centre: best, reach, points, saturatedFrac });
    reach = { logAlpha: reach.logAlpha / 5, logN: reach.logN / 5 };
  }
  return fitted({ at: best, points, saturatedFrac }).curve;
}

interface Place {
  readonly logAlpha: number;
  /** Logarithm of n - 1. */
  readonly logN: number;
}

const HALF_GRID = 12;

function bestNear(of: {
  centre: Place;
  reach: Place;
  points: readonly CurvePoint[];
  saturatedFrac: number;
}): Place {
  const { centre, reach, points, saturatedFrac } = of;
  let best = centre;
  let least = Number.POSITIVE_INFINITY;
  for (let i = -HALF_GRID; i <= HALF_GRID; i++) {
    for (let j = -HALF_GRID; j <= HALF_GRID; j++) {
      const at = {
        logAlpha: centre.logAlpha + (reach.logAlpha * i) / HALF_GRID,
        logN: centre.logN + (reach.logN * j) / HALF_GRID,
      };
      const { missSquare } = fitted({ at, points, saturatedFrac });
      if (missSquare < least) {
        least = missSquare;
        best = at;
      }
    }
  }
  return best;
}

function fitted(of: { at: Place; points: readonly CurvePoint[]; saturatedFrac: number }): {
  curve: RetentionCurve;
  missSquare: number;
} {
  const { at, points, saturatedFrac } = of;
  const alphaPerCm = Math.exp(at.logAlpha);
  const n = 1 + Math.exp(at.logN);
  const filled = points.map(({ suctionCm }) => (1 + (alphaPerCm * suctionCm) ** n) ** (1 / n - 1));
  const weight = filled.reduce((sum, share) => sum + (1 - share) ** 2, 0);
  const pull = points.reduce(
    (sum, { waterFrac }, i) => sum + (1 - filled[i]!) * (waterFrac - saturatedFrac * filled[i]!),
    0,
  );
  const driest = Math.min(...points.map(({ waterFrac }) => waterFrac));
  const residualFrac = Math.min(driest, Math.max(0, weight > 0 ? pull / weight : 0));
  const missSquare = points.reduce((sum, { waterFrac }, i) => {
    const held = residualFrac + (saturatedFrac - residualFrac) * filled[i]!;
    return sum + (held - waterFrac) ** 2;
  }, 0);
  return { curve: { residualFrac, saturatedFrac, alphaPerCm, n }, missSquare };
}
