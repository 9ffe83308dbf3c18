import type { Kysely } from "kysely";
import type { Tables } from "./tables.ts";

/** One device on which somebody is signed in. */
export interface Session {
  /** Digest of what the cookie holds; the cookie itself is not kept. */
  readonly digest: string;
  readonly accountId: string;
  /** Stands for the passphrase at sign-in: with another passphrase the session is over. */
  readonly stamp: string;
  /** What the browser calls itself, shortened. */
  readonly device: string;
  readonly createdUtcMs: number;
  readonly seenUtcMs: number;
}

export interface SessionsStore {
  get(digest: string): Promise<Session | undefined>;
  /** Newest first. */
  ofAccount(accountId: string): Promise<Session[]>;
  add(session: Session): Promise<void>;
  seen(digest: string, seenUtcMs: number): Promise<void>;
  end(digest: string): Promise<void>;
  endAll(accountId: string): Promise<void>;
  /** Ends those that were begun or last seen too long ago. */
  endOld(before: { createdUtcMs: number; seenUtcMs: number }): Promise<void>;
}

export function sessionsStore(db: Kysely<Tables>): SessionsStore {
  const ends = () => db.deleteFrom("session");
  return {
    async get(digest) {
      const row = await db.selectFrom("session").selectAll().where("digest", "=", digest).executeTakeFirst();
      return row && sessionOf(row);
    },
    async ofAccount(accountId) {
      const rows = await db
        .selectFrom("session")
        .selectAll()
        .where("account_id", "=", accountId)
        .orderBy("created_utc_ms", "desc")
        .execute();
      return rows.map(sessionOf);
    },
    async add({ digest, accountId, stamp, device, createdUtcMs, seenUtcMs }) {
      const at = { created_utc_ms: createdUtcMs, seen_utc_ms: seenUtcMs };
      const row = { digest, account_id: accountId, stamp, device, ...at };
      await db.insertInto("session").values(row).execute();
    },
    async seen(digest, seenUtcMs) {
      await db.updateTable("session").set({ seen_utc_ms: seenUtcMs }).where("digest", "=", digest).execute();
    },
    end: async (digest) => void (await ends().where("digest", "=", digest).execute()),
    endAll: async (accountId) => void (await ends().where("account_id", "=", accountId).execute()),
    async endOld({ createdUtcMs, seenUtcMs }) {
      await ends()
        .where((row) =>
          row.or([row("created_utc_ms", "<", createdUtcMs), row("seen_utc_ms", "<", seenUtcMs)]),
        )
        .execute();
    },
  };
}

function sessionOf(row: Tables["session"]): Session {
  const { digest, stamp, device } = row;
  return {
    digest,
    accountId: row.account_id,
    stamp,
    device,
    createdUtcMs: row.created_utc_ms,
    seenUtcMs: row.seen_utc_ms,
  };
}
