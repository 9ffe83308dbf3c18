import type { Kysely } from "kysely";
import type { Role } from "../access/roles.ts";
import type { Tables } from "./tables.ts";

/** Somebody who may sign in. */
export interface Account {
  readonly id: string;
  readonly name: string;
  readonly role: Role;
  /** Record of the passphrase as service/access/passphrase.ts writes it; null until one was chosen. */
  readonly passphrase: string | null;
  /** Digest of the one-time code with which a passphrase may be chosen. */
  readonly codeDigest: string | null;
  readonly codeEndsUtcMs: number | null;
  readonly createdUtcMs: number;
}

export interface AccountsStore {
  /** By name. */
  list(): Promise<Account[]>;
  get(id: string): Promise<Account | undefined>;
  /** Names are compared without regard to capitals. */
  byName(name: string): Promise<Account | undefined>;
  byCode(codeDigest: string): Promise<Account | undefined>;
  put(account: Account): Promise<void>;
  remove(id: string): Promise<void>;
}

export function accountsStore(db: Kysely<Tables>): AccountsStore {
  const rows = () => db.selectFrom("account").selectAll();
  const one = async (row: Promise<Tables["account"] | undefined>) => {
    const found = await row;
    return found && accountOf(found);
  };
  return {
    list: async () => (await rows().orderBy("name").execute()).map(accountOf),
    get: (id) => one(rows().where("id", "=", id).executeTakeFirst()),
    byName: (name) => one(rows().where("name", "=", name).executeTakeFirst()),
    byCode: (digest) => one(rows().where("code_digest", "=", digest).executeTakeFirst()),
    async put(account) {
      const { id, ...row } = rowOf(account);
      await db
        .insertInto("account")
        .values({ id, ...row })
        .onConflict((clash) => clash.column("id").doUpdateSet(row))
        .execute();
    },
    async remove(id) {
      await db.deleteFrom("account").where("id", "=", id).execute();
    },
  };
}

function accountOf(row: Tables["account"]): Account {
  const { id, name, passphrase } = row;
  return {
    id,
    name,
    role: row.role as Role,
    passphrase,
    codeDigest: row.code_digest,
    codeEndsUtcMs: row.code_ends_utc_ms,
    createdUtcMs: row.created_utc_ms,
  };
}

function rowOf(account: Account): Tables["account"] {
  const { id, name, role, passphrase } = account;
  return {
    id,
    name,
    role,
    passphrase,
    code_digest: account.codeDigest,
    code_ends_utc_ms: account.codeEndsUtcMs,
    created_utc_ms: account.createdUtcMs,
  };
}
