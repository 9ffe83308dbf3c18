import type { Problem } from "../problem.ts";
import type { ComponentDraft } from "./own-component.ts";

/** Without these there is nothing to bracket from, so they are asked for. */
const ASKED = ["grain", "role", "compost"] as const;

const SHARES = [
  "totalPorosityFrac",
  "cupCapacityFrac",
  "waterAt10cmFrac",
  "waterAt50cmFrac",
  "waterAt100cmFrac",
  "repellentBelowFrac",
] as const;

const ABOVE_ZERO = ["dryDensityKgPerL", "grainMm"] as const;

/** From the wettest to the driest: none may hold more than the one before. */
const FALLING = ["totalPorosityFrac", "waterAt10cmFrac", "waterAt50cmFrac", "waterAt100cmFrac"] as const;

/** Densest solids in use, kg/L: quartz and basalt lie below. Common practice. */
const DENSEST_SOLID_KG_PER_L = 3;

/** Most pores that a material of this density can have. */
export function mostPorosityFrac(dryDensityKgPerL: number): number {
  return 1 - dryDensityKgPerL / DENSEST_SOLID_KG_PER_L;
}

/** Everything that is missing from or wrong with what a grower told of a component. */
export function draftProblems(draft: ComponentDraft): Problem[] {
  const problems: Problem[] = [];
  const complain = (code: string, field: keyof ComponentDraft, more?: Record<string, unknown>) =>
    problems.push({ code, path: [field], data: { given: draft[field], ...more } });
  if (!/^[a-z0-9]+(-[a-z0-9]+)*$/.test(draft.id)) complain("not-a-plain-name", "id");
  for (const field of ASKED)
    if (draft[field] === undefined) problems.push({ code: "asked-for", path: [field] });
  for (const field of SHARES) if (!isIn(draft[field], 0, 1)) complain("not-a-share", field);
  for (const field of ABOVE_ZERO)
    if (!isIn(draft[field], 0, Number.MAX_VALUE)) complain("not-above-zero", field);
  if (problems.length === 0) problems.push(...orderProblems(draft), ...solidProblems(draft));
  return problems;
}

/** Left out is fine; given, it lies between, ends excluded. */
function isIn(value: number | undefined, above: number, below: number): boolean {
  return value === undefined || (Number.isFinite(value) && value > above && value < below);
}

function orderProblems(draft: ComponentDraft): Problem[] {
  const known = FALLING.filter((field) => draft[field] !== undefined);
  const falls = known.slice(1).flatMap((field, i) => {
    const before = known[i]!;
    if (draft[field]! <= draft[before]!) return [];
    return [
      {
        code: "wrong-order",
        path: [field],
        data: { given: draft[field], atMost: draft[before], other: before },
      },
    ];
  });
  const { cupCapacityFrac, totalPorosityFrac } = draft;
  if (
    cupCapacityFrac === undefined ||
    totalPorosityFrac === undefined ||
    cupCapacityFrac < totalPorosityFrac
  ) {
    return falls;
  }
  const data = { given: cupCapacityFrac, atMost: totalPorosityFrac, other: "totalPorosityFrac" };
  return [...falls, { code: "wrong-order", path: ["cupCapacityFrac"], data }];
}

/** Density and pores together must leave a believable solid. */
function solidProblems({ dryDensityKgPerL, totalPorosityFrac }: ComponentDraft): Problem[] {
  if (dryDensityKgPerL === undefined || totalPorosityFrac === undefined) return [];
  const solidKgPerL = dryDensityKgPerL / (1 - totalPorosityFrac);
  if (solidKgPerL <= DENSEST_SOLID_KG_PER_L) return [];
  const data = {
    given: dryDensityKgPerL,
    totalPorosityFrac,
    solidKgPerL,
    mostKgPerL: DENSEST_SOLID_KG_PER_L,
  };
  return [{ code: "solids-too-dense", path: ["dryDensityKgPerL"], data }];
}
