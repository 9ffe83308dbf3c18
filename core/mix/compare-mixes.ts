import type { GroupValues } from "../plant/group.ts";
import type { Vessel } from "../pot/vessel.ts";
import { vesselProblems } from "../pot/vessel-checks.ts";
import type { Outcome, Problem } from "../problem.ts";
import type { Component, Ranged } from "./component.ts";
import { daysToDry } from "./days-to-dry.ts";
import type { Mix, MixId } from "./mix.ts";
import { type MixFigures, mixFigures } from "./mix-figures.ts";
import { type MixInVessel, workedInVessel } from "./mix-in-vessel.ts";
import { type WorkedMix, workedMix } from "./worked-mix.ts";

export interface ComparisonInput {
  readonly mixes: readonly [Mix, Mix];
  /** The grower's own. */
  readonly vessel: Vessel;
  readonly components: ReadonlyMap<string, Component>;
  readonly plant: { readonly values: GroupValues; readonly canopyWidthCm: number };
  /** Reference evapotranspiration at the spot, this week's mean. */
  readonly et0MmPerDay: number;
}

/** One of two mixes in the same vessel under the same weather. */
export interface ComparedMix {
  readonly mixId: MixId;
  readonly inVessel: MixInVessel;
  readonly figures: MixFigures;
  /** Days from drained to the next watering; null when more than 60. */
  readonly daysToDry: Ranged | null;
}

/** Two mixes side by side: what they hold, air, weight and how soon they dry. */
export function compareMixes(input: ComparisonInput): Outcome<readonly [ComparedMix, ComparedMix]> {
  const [left, right] = input.mixes.map((mix) => workedMix(mix, input.components));
  const problems = [
    ...[left!, right!].flatMap((worked, index) => (worked.ok ? [] : belowMix(index, worked.problems))),
    ...vesselProblems(input.vessel, ["vessel"]),
    ...plantProblems(input),
  ];
  if (!left!.ok || !right!.ok || problems.length > 0) return { ok: false, problems };
  return { ok: true, value: [compared(input, 0, left.value), compared(input, 1, right.value)] };
}

function compared(input: ComparisonInput, index: 0 | 1, worked: WorkedMix): ComparedMix {
  const inVessel = workedInVessel(worked, input.vessel);
  return {
    mixId: input.mixes[index].id,
    inVessel,
    figures: mixFigures(worked),
    daysToDry: daysToDry({ ...input, inVessel }),
  };
}

/** Paths of a worked mix begin with "mix"; here they begin with "mixes" and which of the two. */
function belowMix(index: number, problems: readonly Problem[]): Problem[] {
  return problems.map((problem) => ({ ...problem, path: ["mixes", index, ...problem.path.slice(1)] }));
}

function plantProblems({ plant, et0MmPerDay }: ComparisonInput): Problem[] {
  const problems: Problem[] = [];
  if (!(Number.isFinite(et0MmPerDay) && et0MmPerDay >= 0)) {
    problems.push({ code: "below-zero", path: ["et0MmPerDay"], data: { given: et0MmPerDay } });
  }
  if (!(Number.isFinite(plant.canopyWidthCm) && plant.canopyWidthCm >= 0)) {
    problems.push({
      code: "below-zero",
      path: ["plant", "canopyWidthCm"],
      data: { given: plant.canopyWidthCm },
    });
  }
  return problems;
}
