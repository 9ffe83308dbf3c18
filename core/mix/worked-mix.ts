import type { Outcome } from "../problem.ts";
import { bareRetention } from "./bare-retention.ts";
import { type Blend, blendOf, portionsOf } from "./blend.ts";
import type { Component } from "./component.ts";
import { curveProblems } from "./curve-checks.ts";
import { fitToTest } from "./fit-to-test.ts";
import type { Mix } from "./mix.ts";
import { porosityTestProblems } from "./porosity-test.ts";
import { problemsBelow } from "./problems-below.ts";

/** A mix as the model uses it; `portions` is empty for a bare curve. */
export interface WorkedMix extends Blend {
  readonly libraryOnly: boolean;
}

/** Works out a mix from its parts or its curve, and bends it to the grower's test where there is one. */
export function workedMix(mix: Mix, components: ReadonlyMap<string, Component>): Outcome<WorkedMix> {
  const blended = recipeBlend(mix, components);
  const testProblems = mix.test === undefined ? [] : porosityTestProblems(mix.test, ["mix", "test"]);
  const problems = [...(blended.ok ? [] : blended.problems), ...testProblems];
  if (!blended.ok || problems.length > 0) return { ok: false, problems };
  if (mix.test === undefined) {
    return { ok: true, value: { ...blended.value, libraryOnly: mix.recipe.kind === "parts" } };
  }
  const retention = fitToTest(blended.value.retention, mix.test);
  return { ok: true, value: { ...blended.value, retention, libraryOnly: false } };
}

function recipeBlend(mix: Mix, components: ReadonlyMap<string, Component>): Outcome<Blend> {
  const { recipe } = mix;
  if (recipe.kind === "curve") return curveBlend(recipe);
  const portions = portionsOf(recipe.parts, components);
  if (portions.ok) return { ok: true, value: blendOf(portions.value) };
  return { ok: false, problems: problemsBelow(["mix", "recipe", "parts"], portions.problems) };
}

function curveBlend(recipe: Extract<Mix["recipe"], { kind: "curve" }>): Outcome<Blend> {
  const { curve, dryDensityKgPerL } = recipe;
  const problems = curveProblems(curve, ["mix", "recipe", "curve"]);
  if (!(Number.isFinite(dryDensityKgPerL) && dryDensityKgPerL > 0)) {
    const path = ["mix", "recipe", "dryDensityKgPerL"];
    problems.push({ code: "not-above-zero", path, data: { given: dryDensityKgPerL } });
  }
  if (problems.length > 0) return { ok: false, problems };
  return {
    ok: true,
    value: { portions: [], shrinkFrac: 0, dryDensityKgPerL, retention: bareRetention(curve) },
  };
}
