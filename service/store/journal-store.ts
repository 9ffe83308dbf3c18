import type { Kysely } from "kysely";
import type { JournalEntry } from "../../core/journal/entry.ts";
import { JournalEntrySchema } from "../case/journal-schema.ts";
import { writtenEntry } from "../case/write-case.ts";
import { StoreFault } from "./store-fault.ts";
import type { Tables } from "./tables.ts";

export interface Appended {
  readonly added: number;
  /** Entries that were here already under the same id; the first one stands. */
  readonly repeated: number;
}

export interface JournalStore {
  /** All of them or none. @throws ZodError when one is not of the shape: whoever called should have checked */
  append(siteId: string, entries: readonly JournalEntry[]): Promise<Appended>;
  /** In the order in which they came in; with `untilSeq` as far as the journal went then. */
  list(siteId: string, untilSeq?: number): Promise<JournalEntry[]>;
  /** How far the journal goes: the number of the newest entry in the order of arrival, 0 for none. */
  latestSeq(siteId: string): Promise<number>;
}

/** Rows per insert: each has 6 values and SQLite takes 32766 at a time. */
const ROWS_AT_ONCE = 1000;

export function journalStore(db: Kysely<Tables>): JournalStore {
  return {
    append: (siteId, entries) =>
      db.isTransaction
        ? append(db, { siteId, entries })
        : db.transaction().execute((step) => append(step, { siteId, entries })),
    async list(siteId, untilSeq = Number.MAX_SAFE_INTEGER) {
      const rows = await db
        .selectFrom("journal")
        .select(["id", "at_utc_ms", "recorded_utc_ms", "pot_id", "body"])
        .where("site_id", "=", siteId)
        .where("seq", "<=", untilSeq)
        .orderBy("seq")
        .execute();
      return rows.map(entryOfRow);
    },
    async latestSeq(siteId) {
      const row = await db
        .selectFrom("journal")
        .select((one) => one.fn.max<number | null>("seq").as("seq"))
        .where("site_id", "=", siteId)
        .executeTakeFirst();
      return row?.seq ?? 0;
    },
  };
}

async function append(
  db: Kysely<Tables>,
  { siteId, entries }: { siteId: string; entries: readonly JournalEntry[] },
): Promise<Appended> {
  let added = 0;
  for (let from = 0; from < entries.length; from += ROWS_AT_ONCE) {
    const rows = entries.slice(from, from + ROWS_AT_ONCE).map((entry) => rowOfEntry(siteId, entry));
    const { numInsertedOrUpdatedRows = 0n } = await db
      .insertInto("journal")
      .values(rows)
      .onConflict((clash) => clash.columns(["site_id", "id"]).doNothing())
      .executeTakeFirstOrThrow();
    added += Number(numInsertedOrUpdatedRows);
  }
  return { added, repeated: entries.length - added };
}

function rowOfEntry(siteId: string, entry: JournalEntry) {
  // What would not come back from an export must not go in.
  const { id, atUtcMs, recordedUtcMs, potId, body } = JournalEntrySchema.parse(writtenEntry(entry));
  return {
    site_id: siteId,
    id,
    at_utc_ms: atUtcMs,
    recorded_utc_ms: recordedUtcMs,
    pot_id: potId ?? null,
    body: JSON.stringify(body),
  };
}

function entryOfRow(row: {
  id: string;
  at_utc_ms: number;
  recorded_utc_ms: number;
  pot_id: string | null;
  body: string;
}): JournalEntry {
  const body = JSON.parse(row.body);
  if (typeof body?.kind !== "string")
    throw new StoreFault("store-row-damaged", { what: `journal ${row.id}` });
  return {
    id: row.id,
    atUtcMs: row.at_utc_ms,
    recordedUtcMs: row.recorded_utc_ms,
    ...(row.pot_id === null ? {} : { potId: row.pot_id }),
    body,
  };
}
