import { componentsById } from "../../core/mix/library.ts";
import { nearestNames } from "../../core/mix/nearest-names.ts";
import { groupsById } from "../../core/plant/groups.ts";
import type { Problem } from "../../core/problem.ts";
import { type Found, found, numberAt, textAt } from "./raw-case.ts";
import { weatherRules } from "./weather-rules.ts";

/**
 * The rules between fields. They read the raw case, so that a slip of the pen in one place does not hide a broken
 * reference in another; what has the wrong shape is passed over here and told by the schema.
 */
export function caseRules(raw: unknown): Problem[] {
  return [...uniqueIds(raw), ...references(raw), ...sizes(raw), ...weatherRules(raw)];
}

const ID_LISTS = [
  ["collection", "spots"],
  ["collection", "mixes"],
  ["collection", "pots"],
  ["collection", "ownComponents"],
  ["collection", "ownGroups"],
] as const;

function uniqueIds(raw: unknown): Problem[] {
  return ID_LISTS.flatMap((path) => {
    const seen = new Map<string, number>();
    return found(raw, path).flatMap(({ value, path: at }) => {
      const id = textAt(value, ["id"]);
      if (id === undefined) return [];
      const first = seen.get(id);
      if (first === undefined) seen.set(id, Number(at.at(-1)));
      return first === undefined
        ? []
        : [{ code: "id-taken", path: [...at, "id"], data: { id, firstAt: first } }];
    });
  });
}

function references(raw: unknown): Problem[] {
  const spots = idsOf(raw, ["collection", "spots"]);
  const mixes = idsOf(raw, ["collection", "mixes"]);
  const pots = idsOf(raw, ["collection", "pots"]);
  const groups = [...groupsById().keys(), ...idsOf(raw, ["collection", "ownGroups"])];
  const components = [...componentsById().keys(), ...idsOf(raw, ["collection", "ownComponents"])];
  return [
    ...dangling(found(raw, ["collection", "pots"]), {
      key: ["groupId"],
      known: groups,
      code: "unknown-group",
    }),
    ...dangling(found(raw, ["collection", "pots"]), {
      key: ["firstSpotId"],
      known: spots,
      code: "unknown-spot",
    }),
    ...dangling(partsOf(raw), { key: ["component"], known: components, code: "unknown-component" }),
    ...journalReferences(raw, { pots, mixes, spots }),
  ];
}

function journalReferences(
  raw: unknown,
  known: { pots: readonly string[]; mixes: readonly string[]; spots: readonly string[] },
): Problem[] {
  const entries = found(raw, ["journal"]).flatMap(withCorrectedBodies);
  return [
    ...dangling(entries, { key: ["potId"], known: known.pots, code: "unknown-pot" }),
    ...dangling(entries, { key: ["body", "mixId"], known: known.mixes, code: "unknown-mix" }),
    ...dangling(entries, { key: ["body", "toSpotId"], known: known.spots, code: "unknown-spot" }),
  ];
}

/** A correction carries the entry it puts in place of another one: pot and body again. */
function withCorrectedBodies(entry: Found): Found[] {
  if (textAt(entry.value, ["body", "kind"]) !== "correction") return [entry];
  const body = (entry.value as { body: unknown }).body;
  return [entry, ...withCorrectedBodies({ value: body, path: [...entry.path, "body"] })];
}

function partsOf(raw: unknown): Found[] {
  return found(raw, ["collection", "mixes"]).flatMap(({ value, path }) =>
    found(value, ["recipe", "parts"]).map((part) => ({ ...part, path: [...path, ...part.path] })),
  );
}

function dangling(
  holders: readonly Found[],
  rule: { key: readonly string[]; known: readonly string[]; code: string },
): Problem[] {
  const known = new Set(rule.known);
  return holders.flatMap(({ value, path }) => {
    const given = textAt(value, rule.key);
    if (given === undefined || known.has(given)) return [];
    return [
      { code: rule.code, path: [...path, ...rule.key], data: { given, nearest: nearestNames(given, known) } },
    ];
  });
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
  {
    list: ["collection", "mixes"],
    low: ["recipe", "curve", "residualFrac"],
    high: ["recipe", "curve", "saturatedFrac"],
  },
] as const;

function sizes(raw: unknown): Problem[] {
  return ORDERED.flatMap(({ list, low, high }) =>
    found(raw, list).flatMap(({ value, path }) => {
      const least = numberAt(value, low);
      const most = numberAt(value, high);
      if (least === undefined || most === undefined || least <= most) return [];
      return [
        {
          code: "wrong-order",
          path: [...path, ...low],
          data: { given: least, atMost: most, other: high.join(".") },
        },
      ];
    }),
  );
}

function idsOf(raw: unknown, path: readonly string[]): string[] {
  return found(raw, path).flatMap(({ value }) => textAt(value, ["id"]) ?? []);
}
