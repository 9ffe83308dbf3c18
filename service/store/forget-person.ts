import { type Kysely, sql } from "kysely";
import type { Outcome } from "../../core/problem.ts";
import { withoutName } from "./name-in-text.ts";
import type { Store } from "./open-store.ts";
import type { Tables } from "./tables.ts";

/** How much of a person was there to be let go of. */
export interface Forgotten {
  /** Ways by which messages went to that person, with their addresses and keys. */
  readonly ways: number;
  readonly messages: number;
  /** Devices on which that person was signed in. */
  readonly sessions: number;
  /** Journal entries in whose words the name stood. */
  readonly entries: number;
}

/**
 * Lets go of a person: the ways to them and every message that went by one, their sign-in and devices, and their name
 * in the words of the journal. What was done to the pots stays. The owner's own sign-in stays too, or nobody could
 * come in. Freed pages of the file are overwritten; backups made before hold the person until they are rotated out.
 *
 * @returns "no-such-person", or "owner-stays"
 */
export async function forgetPerson(store: Store, name: string): Promise<Outcome<Forgotten>> {
  const same = (other: string) => other.localeCompare(name, undefined, { sensitivity: "accent" }) === 0;
  const people = (await store.people.list()).filter((person) => same(person.name));
  const account = (await store.accounts.list()).find((one) => same(one.name));
  if (people.length === 0 && !account)
    return { ok: false, problems: [{ code: "no-such-person", path: ["<name>"], data: { given: name } }] };
  if (account?.role === "owner")
    return { ok: false, problems: [{ code: "owner-stays", path: ["<name>"], data: { given: name } }] };
  store.raw.pragma("secure_delete = ON");
  const value = await store.db.transaction().execute(async (step) => ({
    ...(await forgetWays(step, people)),
    sessions: account ? await forgetAccount(step, account.id) : 0,
    entries: await forgetInJournal(step, name),
  }));
  store.raw.pragma("wal_checkpoint(TRUNCATE)");
  return { ok: true, value };
}

async function forgetWays(step: Kysely<Tables>, people: readonly { readonly id: string }[]) {
  const ids = people.map(({ id }) => id);
  if (ids.length === 0) return { ways: 0, messages: 0 };
  const ways = await step.selectFrom("channel").select("id").where("person_id", "in", ids).execute();
  const names = ways.map(({ id }) => id);
  const gone =
    names.length === 0
      ? []
      : await step.deleteFrom("outbox").where("channel", "in", names).returning("id").execute();
  await step.deleteFrom("person").where("id", "in", ids).execute();
  return { ways: names.length, messages: gone.length };
}

async function forgetAccount(step: Kysely<Tables>, id: string): Promise<number> {
  const gone = await step.deleteFrom("session").where("account_id", "=", id).returning("digest").execute();
  await step.deleteFrom("kept_answer").where("asker", "=", id).execute();
  await step.deleteFrom("account").where("id", "=", id).execute();
  return gone.length;
}

/** The journal only grows, but for this: its guard is lifted and put back within the one transaction. */
async function forgetInJournal(step: Kysely<Tables>, name: string): Promise<number> {
  const rows = await step.selectFrom("journal").select(["seq", "body"]).execute();
  const changed = rows.flatMap(({ seq, body }) => {
    const without = JSON.stringify(withoutName(JSON.parse(body), name));
    return without === body ? [] : [{ seq, body: without }];
  });
  if (changed.length === 0) return 0;
  const guard = await sql<{
    sql: string;
  }>`SELECT sql FROM sqlite_schema WHERE name = 'journal_no_update'`.execute(step);
  await sql`DROP TRIGGER journal_no_update`.execute(step);
  for (const { seq, body } of changed)
    await step.updateTable("journal").set({ body }).where("seq", "=", seq).execute();
  await sql.raw(guard.rows[0]!.sql).execute(step);
  return changed.length;
}
