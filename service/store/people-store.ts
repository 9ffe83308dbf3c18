import type { Kysely } from "kysely";
import { readDocument, writeDocument } from "./documents.ts";
import { type Person, PersonSchema, type StoredChannel, StoredChannelSchema } from "./person.ts";
import type { Tables } from "./tables.ts";

export interface PeopleStore {
  list(): Promise<Person[]>;
  get(id: string): Promise<Person | null>;
  put(person: Person): Promise<void>;
  /** With every way to that person. */
  remove(id: string): Promise<void>;
}

export interface ChannelsStore {
  /** In the order of their ids. */
  list(): Promise<StoredChannel[]>;
  get(id: string): Promise<StoredChannel | null>;
  put(channel: StoredChannel): Promise<void>;
  remove(id: string): Promise<void>;
}

export function peopleStore(db: Kysely<Tables>, now: () => number): PeopleStore {
  const personOf = (row: { id: string; document: string }) =>
    readDocument(PersonSchema, row.document, `person ${row.id}`);
  return {
    async list() {
      return (await db.selectFrom("person").selectAll().orderBy("id").execute()).map(personOf);
    },
    async get(id) {
      const row = await db.selectFrom("person").selectAll().where("id", "=", id).executeTakeFirst();
      return row ? personOf(row) : null;
    },
    async put(person) {
      const row = { document: writeDocument(PersonSchema, person), updated_utc_ms: now() };
      await db
        .insertInto("person")
        .values({ id: person.id, ...row })
        .onConflict((clash) => clash.column("id").doUpdateSet(row))
        .execute();
    },
    async remove(id) {
      await db.deleteFrom("person").where("id", "=", id).execute();
    },
  };
}

export function channelsStore(db: Kysely<Tables>, now: () => number): ChannelsStore {
  const channelOf = (row: { id: string; document: string }) =>
    readDocument(StoredChannelSchema, row.document, `channel ${row.id}`);
  return {
    async list() {
      return (await db.selectFrom("channel").selectAll().orderBy("id").execute()).map(channelOf);
    },
    async get(id) {
      const row = await db.selectFrom("channel").selectAll().where("id", "=", id).executeTakeFirst();
      return row ? channelOf(row) : null;
    },
    async put(channel) {
      const row = { document: writeDocument(StoredChannelSchema, channel), updated_utc_ms: now() };
      await db
        .insertInto("channel")
        .values({ id: channel.id, person_id: channel.personId, ...row })
        .onConflict((clash) => clash.column("id").doUpdateSet(row))
        .execute();
    },
    async remove(id) {
      await db.deleteFrom("channel").where("id", "=", id).execute();
    },
  };
}
