import { componentsById } from "../../core/mix/library.ts";
import { workedMix } from "../../core/mix/worked-mix.ts";
import { vesselProblems } from "../../core/pot/vessel-checks.ts";
import type { Problem } from "../../core/problem.ts";
import { entriesAsMeant } from "./entries-as-meant.ts";
import { MixSchema, VesselSchema } from "./mix-schema.ts";
import { found, numberAt, valueAt } from "./raw-case.ts";

/** What the core says of vessels and mixes of the right shape, and the order of figures in the grower's own tables. */
export function sizeRules(raw: unknown): Problem[] {
  return [...wrongOrder(raw), ...mixRules(raw), ...vesselRules(raw)];
}

/** Pairs of which the first must not exceed the second. */
const ORDERED = [
  { list: ["collection", "ownGroups"], low: ["values", "killC"], high: ["values", "damageC"] },
  ...[
    "dryDensityKgPerL",
    "totalPorosityFrac",
    "waterAt10cmFrac",
    "waterAt50cmFrac",
    "waterAt100cmFrac",
  ].flatMap((name) => [
    { list: ["collection", "ownComponents"], low: [name, "low"], high: [name, "mid"] },
    { list: ["collection", "ownComponents"], low: [name, "mid"], high: [name, "high"] },
  ]),
  { list: ["collection", "ownComponents"], low: ["curve", "residualFrac"], high: ["curve", "saturatedFrac"] },
] as const;

function wrongOrder(raw: unknown): Problem[] {
  return ORDERED.flatMap(({ list, low, high }) =>
    found(raw, list).flatMap(({ value, path }) => {
      const least = numberAt(value, low);
      const most = numberAt(value, high);
      if (least === undefined || most === undefined || least <= most) return [];
      const data = { given: least, atMost: most, other: high.join(".") };
      return [{ code: "wrong-order", path: [...path, ...low], data }];
    }),
  );
}

/** Unknown components are told by the references, with the grower's own beside the library's. */
function mixRules(raw: unknown): Problem[] {
  return found(raw, ["collection", "mixes"]).flatMap(({ value, path }) => {
    const mix = MixSchema.safeParse(value);
    const worked = mix.success ? workedMix(mix.data, componentsById()) : undefined;
    if (!worked || worked.ok) return [];
    return worked.problems
      .filter(({ code }) => code !== "unknown-component")
      .map((problem) => ({ ...problem, path: [...path, ...problem.path.slice(1)] }));
  });
}

function vesselRules(raw: unknown): Problem[] {
  return entriesAsMeant(raw).flatMap(({ value, path }) => {
    const vessel = VesselSchema.safeParse(valueAt(value, ["body", "vessel"]));
    return vessel.success ? vesselProblems(vessel.data, [...path, "body", "vessel"]) : [];
  });
}
