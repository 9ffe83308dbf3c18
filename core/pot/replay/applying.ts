import type { EntryBody, JournalEntry } from "../../journal/entry.ts";
import type { ReplayContext } from "./replay-context.ts";
import type { TankKeeper } from "./tank-keeper.ts";

/** What entries are applied with. */
export interface Applying {
  readonly context: ReplayContext;
  readonly keeper: TankKeeper;
}

/** A journal entry of one kind. */
export type EntryOf<Kind extends EntryBody["kind"]> = JournalEntry & {
  readonly body: Extract<EntryBody, { kind: Kind }>;
};
