import type { Kysely } from "kysely";
import type { Role } from "../access/roles.ts";
import type { Tables } from "./tables.ts";

/** Lets a script ask as if it had this role, until it ends. */
export interface ApiToken {
  readonly id: string;
  /** Digest of the token; the token itself is shown once and not kept. */
  readonly digest: string;
  readonly name: string;
  readonly role: Role;
  readonly createdUtcMs: number;
  readonly endsUtcMs: number;
  readonly usedUtcMs: number | null;
}

export interface TokensStore {
  /** Newest first. */
  list(): Promise<ApiToken[]>;
  byDigest(digest: string): Promise<ApiToken | undefined>;
  add(token: ApiToken): Promise<void>;
  used(id: string, usedUtcMs: number): Promise<void>;
  remove(id: string): Promise<void>;
}

export function tokensStore(db: Kysely<Tables>): TokensStore {
  return {
    async list() {
      const rows = await db.selectFrom("api_token").selectAll().orderBy("created_utc_ms", "desc").execute();
      return rows.map(tokenOf);
    },
    async byDigest(digest) {
      const row = await db
        .selectFrom("api_token")
        .selectAll()
        .where("digest", "=", digest)
        .executeTakeFirst();
      return row && tokenOf(row);
    },
    async add({ id, digest, name, role, createdUtcMs, endsUtcMs, usedUtcMs }) {
      const times = { created_utc_ms: createdUtcMs, ends_utc_ms: endsUtcMs, used_utc_ms: usedUtcMs };
      await db
        .insertInto("api_token")
        .values({ id, digest, name, role, ...times })
        .execute();
    },
    async used(id, usedUtcMs) {
      await db.updateTable("api_token").set({ used_utc_ms: usedUtcMs }).where("id", "=", id).execute();
    },
    async remove(id) {
      await db.deleteFrom("api_token").where("id", "=", id).execute();
    },
  };
}

function tokenOf(row: Tables["api_token"]): ApiToken {
  const { id, digest, name } = row;
  return {
    id,
    digest,
    name,
    role: row.role as Role,
    createdUtcMs: row.created_utc_ms,
    endsUtcMs: row.ends_utc_ms,
    usedUtcMs: row.used_utc_ms,
  };
}
