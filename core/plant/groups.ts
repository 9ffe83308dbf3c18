import type { SourceKey } from "../sources.ts";
import type { GroupId, GroupValues, PlantGroup, ValueStatus } from "./group.ts";
import type { GroupRow } from "./group-row.ts";
import { LEAFY_GROUPS } from "./groups-leafy.ts";
import { SUCCULENT_GROUPS } from "./groups-succulent.ts";

type Evidence = PlantGroup["evidence"][keyof GroupValues];

/** Every kind of plant known to the library. */
export const GROUPS: readonly PlantGroup[] = [...SUCCULENT_GROUPS, ...LEAFY_GROUPS].map(groupOfRow);

/** The library's groups with the grower's own beside them; an own group of the same id takes the place. */
export function groupsById(own: readonly PlantGroup[] = []): ReadonlyMap<GroupId, PlantGroup> {
  return new Map([...GROUPS, ...own].map((group) => [group.id, group]));
}

function groupOfRow(row: GroupRow): PlantGroup {
  const names = Object.keys(row.values) as (keyof GroupValues)[];
  const evidence = Object.fromEntries(names.map((name) => [name, evidenceOf(row.from[name])]));
  return { id: row.id, values: row.values, evidence: evidence as PlantGroup["evidence"] };
}

/** What no source backs is our own choice, and says so. */
function evidenceOf(from: readonly [ValueStatus, SourceKey | null] | undefined): Evidence {
  return from === undefined ? { status: "chosen", key: null } : { status: from[0], key: from[1] };
}
