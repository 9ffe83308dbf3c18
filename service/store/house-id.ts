import type Database from "better-sqlite3";

/** A random name of this store, made once; part of message ids so that two houses never share one. */
export function houseId(raw: Database.Database): string {
  raw
    .prepare(
      "INSERT INTO house (name, value) VALUES ('id', lower(hex(randomblob(16)))) ON CONFLICT DO NOTHING",
    )
    .run();
  return raw.prepare("SELECT value FROM house WHERE name = 'id'").pluck().get() as string;
}
