import { bareRetention } from "../../../core/mix/bare-retention.ts";
import type { RetentionCurve } from "../../../core/mix/curve.ts";
import { componentsById } from "../../../core/mix/library.ts";
import type { Mix, MixPart } from "../../../core/mix/mix.ts";
import { type WorkedMix, workedMix } from "../../../core/mix/worked-mix.ts";
import { waterMlAtRest } from "../../../core/pot/hold-water.ts";
import type { Vessel } from "../../../core/pot/vessel.ts";
import { mixDepthCm, volumeMlBetween } from "../../../core/pot/vessel-shape.ts";
import type { Outcome } from "../../../core/problem.ts";

/** Parts from pairs, so that a recipe reads as a grower says it. */
export function parts(recipe: Readonly<Record<string, number>>): MixPart[] {
  return Object.entries(recipe).map(([component, count]) => ({ component, parts: count }));
}

export function mixOf(recipe: Readonly<Record<string, number>>, more: Partial<Mix> = {}): Mix {
  return { id: "mix", name: "mix", recipe: { kind: "parts", parts: parts(recipe) }, ...more };
}

export function worked(recipe: Readonly<Record<string, number>>): WorkedMix {
  return got(workedMix(mixOf(recipe), componentsById()));
}

export function cylinder(heightCm: number, more: Partial<Vessel> = {}): Vessel {
  return { shape: "round", topCm: 10, baseCm: 10, heightCm, material: "plastic", ...more };
}

/** What a drained vessel holds of a bare curve, share of its volume. */
export function capacityFracOf(curve: RetentionCurve, vessel: Vessel): number {
  return heldFrac({ retention: bareRetention(curve) }, vessel);
}

/** What a drained vessel holds of a mix, share of its volume. */
export function heldFrac(mix: Pick<WorkedMix, "retention">, vessel: Vessel): number {
  const { retention } = mix;
  const heldMl = waterMlAtRest({ retention, vessel, suctionAtBaseCm: -(vessel.saucerCm ?? 0) });
  return heldMl / volumeMlBetween(vessel, { fromCm: 0, toCm: mixDepthCm(vessel) });
}

export function got<T>(outcome: Outcome<T>): T {
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

export function problemsOf<T>(outcome: Outcome<T>): { code: string; path: string }[] {
  if (outcome.ok) throw new Error("no problems");
  return outcome.problems.map(({ code, path }) => ({ code, path: path.join(".") }));
}
