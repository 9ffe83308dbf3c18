import type { SourceKey } from "../sources.ts";
import type { GroupId, GroupValues, ValueStatus } from "./group.ts";

/** One row of the tables: the values, and where those come from that are not simply our own choice. */
export interface GroupRow {
  readonly id: GroupId;
  readonly values: GroupValues;
  readonly from: Readonly<Partial<Record<keyof GroupValues, readonly [ValueStatus, SourceKey | null]>>>;
}
