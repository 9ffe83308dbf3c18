import { componentsById } from "../../core/mix/library.ts";
import { nearestNames } from "../../core/mix/nearest-names.ts";
import { groupsById } from "../../core/plant/groups.ts";
import type { Problem } from "../../core/problem.ts";
import { entriesAsMeant } from "./entries-as-meant.ts";
import { type Found, found, textAt } from "./raw-case.ts";
import { sizeRules } from "./size-rules.ts";
import { weatherRules } from "./weather-rules.ts";

/**
 * The rules between fields. They read the raw case, so that a slip of the pen in one place does not hide a broken
 * reference in another; what has the wrong shape is passed over here and told by the schema.
 */
export function caseRules(raw: unknown): Problem[] {
  return [...uniqueIds(raw), ...references(raw), ...sizeRules(raw), ...weatherRules(raw)];
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
  const entries = entriesAsMeant(raw);
  return [
    ...dangling(entries, { key: ["potId"], known: known.pots, code: "unknown-pot" }),
    ...dangling(entries, { key: ["body", "mixId"], known: known.mixes, code: "unknown-mix" }),
    ...dangling(entries, { key: ["body", "toSpotId"], known: known.spots, code: "unknown-spot" }),
  ];
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

function idsOf(raw: unknown, path: readonly string[]): string[] {
  return found(raw, path).flatMap(({ value }) => textAt(value, ["id"]) ?? []);
}
