import { type Kysely, type Selectable, sql } from "kysely";
import type { Tables } from "./tables.ts";

/** A message to be delivered. The same id is never taken in twice. */
export interface NewMessage {
  readonly id: string;
  readonly siteId: string;
  readonly planId: number | null;
  readonly channel: string;
  readonly subject: string;
  readonly body: string;
  readonly createdUtcMs: number;
  readonly keepTryingUntilUtcMs: number;
  /** What its way needs besides the text, as JSON of which only that way knows the shape. */
  readonly extra?: string | null;
}

export interface Message extends NewMessage {
  readonly state: "waiting" | "sent" | "given-up";
  readonly tries: number;
  readonly nextTryUtcMs: number;
  readonly settledUtcMs: number | null;
  readonly lastFault: string | null;
}

export interface OutboxStore {
  /** Returns how many were new. */
  add(messages: readonly NewMessage[]): Promise<number>;
  /** Waiting messages whose next try has come, oldest first. */
  due(nowUtcMs: number, limit?: number): Promise<Message[]>;
  markSent(id: string, atUtcMs: number): Promise<void>;
  markFailed(id: string, how: { fault: string; nextTryUtcMs: number }): Promise<void>;
  /** Not before that instant; does not count as a try. */
  postpone(id: string, untilUtcMs: number): Promise<void>;
  markGivenUp(id: string, how: { fault: string; atUtcMs: number }): Promise<void>;
  /** Newest first. */
  list(siteId: string, limit?: number): Promise<Message[]>;
  counts(): Promise<Record<"waiting" | "sent" | "given-up", number>>;
}

export function outboxStore(db: Kysely<Tables>): OutboxStore {
  const set = (id: string, values: Partial<Selectable<Tables["outbox"]>>) =>
    db.updateTable("outbox").set(values).where("id", "=", id).where("state", "=", "waiting");
  return {
    add: (messages) => add(db, messages),
    async due(nowUtcMs, limit = 20) {
      const rows = await db
        .selectFrom("outbox")
        .selectAll()
        // Written out, so that the index of waiting ones is used.
        .where("state", "=", sql.lit("waiting"))
        .where("next_try_utc_ms", "<=", nowUtcMs)
        .orderBy("created_utc_ms")
        .orderBy("id")
        .limit(limit)
        .execute();
      return rows.map(messageOfRow);
    },
    async markSent(id, atUtcMs) {
      await set(id, { state: "sent", settled_utc_ms: atUtcMs, last_fault: null }).execute();
    },
    async markFailed(id, { fault, nextTryUtcMs }) {
      await set(id, { last_fault: fault, next_try_utc_ms: nextTryUtcMs })
        .set((row) => ({ tries: row("tries", "+", 1) }))
        .execute();
    },
    async postpone(id, untilUtcMs) {
      await set(id, { next_try_utc_ms: untilUtcMs }).execute();
    },
    async markGivenUp(id, { fault, atUtcMs }) {
      await set(id, { state: "given-up", last_fault: fault, settled_utc_ms: atUtcMs }).execute();
    },
    async list(siteId, limit = 50) {
      const rows = await db
        .selectFrom("outbox")
        .selectAll()
        .where("site_id", "=", siteId)
        .orderBy("created_utc_ms", "desc")
        .orderBy("id")
        .limit(limit)
        .execute();
      return rows.map(messageOfRow);
    },
    counts: () => counts(db),
  };
}

async function add(db: Kysely<Tables>, messages: readonly NewMessage[]): Promise<number> {
  if (messages.length === 0) return 0;
  const { numInsertedOrUpdatedRows = 0n } = await db
    .insertInto("outbox")
    .values(
      messages.map((message) => ({
        id: message.id,
        site_id: message.siteId,
        plan_id: message.planId,
        channel: message.channel,
        subject: message.subject,
        body: message.body,
        created_utc_ms: message.createdUtcMs,
        keep_trying_until_utc_ms: message.keepTryingUntilUtcMs,
        state: "waiting" as const,
        tries: 0,
        next_try_utc_ms: message.createdUtcMs,
        settled_utc_ms: null,
        last_fault: null,
        extra: message.extra ?? null,
      })),
    )
    .onConflict((clash) => clash.column("id").doNothing())
    .executeTakeFirstOrThrow();
  return Number(numInsertedOrUpdatedRows);
}

async function counts(db: Kysely<Tables>) {
  const rows = await db
    .selectFrom("outbox")
    .select((row) => ["state", row.fn.countAll<number>().as("count")])
    .groupBy("state")
    .execute();
  const of = (state: string) => Number(rows.find((row) => row.state === state)?.count ?? 0);
  return { waiting: of("waiting"), sent: of("sent"), "given-up": of("given-up") };
}

function messageOfRow(row: Selectable<Tables["outbox"]>): Message {
  return {
    id: row.id,
    siteId: row.site_id,
    planId: row.plan_id,
    channel: row.channel,
    subject: row.subject,
    body: row.body,
    createdUtcMs: row.created_utc_ms,
    keepTryingUntilUtcMs: row.keep_trying_until_utc_ms,
    state: row.state,
    tries: row.tries,
    nextTryUtcMs: row.next_try_utc_ms,
    settledUtcMs: row.settled_utc_ms,
    lastFault: row.last_fault,
    extra: row.extra,
  };
}
