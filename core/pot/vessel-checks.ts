import type { Problem } from "../problem.ts";
import type { Vessel } from "./vessel.ts";

type Path = readonly (string | number)[];

const ABOVE_ZERO = ["topCm", "baseCm", "heightCm"] as const;
const NOT_BELOW_ZERO = ["rimGapCm", "saucerCm", "topDressingCm", "emptyMassKg"] as const;

/** No pot, bed or saucer is larger; it catches a slip of the keys. Chosen by us. */
const MOST_CM = 1000;

/** Everything that makes a vessel impossible. */
export function vesselProblems(vessel: Vessel, path: Path = []): Problem[] {
  const problems: Problem[] = [];
  const complain = (code: string, field: keyof Vessel, more?: Record<string, unknown>) =>
    problems.push({ code, path: [...path, field], data: { given: vessel[field], ...more } });
  if (vessel.shape !== "round" && vessel.shape !== "square") complain("unknown-shape", "shape");
  for (const field of ABOVE_ZERO) {
    if (!(Number.isFinite(vessel[field]) && vessel[field] > 0)) complain("not-above-zero", field);
  }
  for (const field of NOT_BELOW_ZERO) {
    const given = vessel[field];
    if (given !== undefined && !(Number.isFinite(given) && given >= 0)) complain("below-zero", field);
  }
  for (const field of [...ABOVE_ZERO, "saucerCm"] as const) {
    const given = vessel[field] ?? 0;
    if (Number.isFinite(given) && given > MOST_CM) complain("too-large", field, { most: MOST_CM });
  }
  if (problems.length === 0 && lostDepthCm(vessel) >= vessel.heightCm) {
    complain(
      "no-room-for-mix",
      (vessel.topDressingCm ?? 0) > (vessel.rimGapCm ?? 0) ? "topDressingCm" : "rimGapCm",
    );
  }
  return problems;
}

/** What is possible but worth asking about before it is relied on. Only for a vessel without problems. */
export function vesselQuestions(vessel: Vessel, path: Path = []): Problem[] {
  const questions: Problem[] = [];
  if (vessel.baseCm > vessel.topCm) {
    const data = { topCm: vessel.topCm, baseCm: vessel.baseCm };
    questions.push({ code: "base-wider-than-rim", path: [...path, "baseCm"], data });
  }
  if ((vessel.saucerCm ?? 0) >= vessel.heightCm) {
    const data = { saucerCm: vessel.saucerCm, heightCm: vessel.heightCm };
    questions.push({ code: "saucer-as-deep-as-pot", path: [...path, "saucerCm"], data });
  }
  return questions;
}

function lostDepthCm(vessel: Vessel): number {
  return Math.max(vessel.rimGapCm ?? 0, vessel.topDressingCm ?? 0);
}
