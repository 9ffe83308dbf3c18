import type { Problem } from "../problem.ts";
import type { RetentionCurve } from "./curve.ts";

/** Everything that makes a retention curve impossible. */
export function curveProblems(curve: RetentionCurve, path: readonly (string | number)[] = []): Problem[] {
  const problems: Problem[] = [];
  const complain = (code: string, field: keyof RetentionCurve, more?: Record<string, unknown>) =>
    problems.push({ code, path: [...path, field], data: { given: curve[field], ...more } });
  const { residualFrac, saturatedFrac, alphaPerCm, n } = curve;
  if (!isShare(residualFrac)) complain("not-a-share", "residualFrac");
  if (!(isShare(saturatedFrac) && saturatedFrac > 0)) complain("not-a-share", "saturatedFrac");
  if (isShare(residualFrac) && isShare(saturatedFrac) && saturatedFrac > 0 && residualFrac >= saturatedFrac) {
    complain("residual-not-below-saturated", "residualFrac", { saturatedFrac });
  }
  if (!(Number.isFinite(alphaPerCm) && alphaPerCm > 0)) complain("not-above-zero", "alphaPerCm");
  if (!(Number.isFinite(n) && n > 1)) complain("n-not-above-one", "n");
  return problems;
}

function isShare(value: number): boolean {
  return Number.isFinite(value) && value >= 0 && value <= 1;
}
