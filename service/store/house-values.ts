import { randomBytes } from "node:crypto";
import type Database from "better-sqlite3";

/** What the house made for itself at its first start and keeps for life. */
export interface HouseValues {
  /** Random name; part of message ids so that two houses never share one. */
  readonly id: string;
  /** Signs the links in messages. */
  readonly linkKey: Buffer;
  /** A value of that name, made by `make` when there is none yet. */
  kept(name: string, make: () => string): string;
}

const LINK_KEY_BYTES = 32;
const ID_BYTES = 16;

export function houseValues(raw: Database.Database): HouseValues {
  const read = raw.prepare("SELECT value FROM house WHERE name = ?").pluck();
  const write = raw.prepare("INSERT INTO house (name, value) VALUES (?, ?) ON CONFLICT DO NOTHING");
  const kept = (name: string, make: () => string): string => {
    const known = read.get(name) as string | undefined;
    if (known !== undefined) return known;
    // Another process may have been quicker: what is stored counts.
    write.run(name, make());
    return read.get(name) as string;
  };
  return {
    kept,
    get id() {
      return kept("id", () => randomBytes(ID_BYTES).toString("hex"));
    },
    get linkKey() {
      return Buffer.from(
        kept("link-key", () => randomBytes(LINK_KEY_BYTES).toString("base64url")),
        "base64url",
      );
    },
  };
}
