import type { Kysely } from "kysely";
import type { Tables } from "./tables.ts";

/** An answer that was given under a key of the asker's, so that the same request sent again gets it again. */
export interface KeptAnswer {
  readonly requestDigest: string;
  readonly answer: { readonly status: 200 | 201; readonly body: unknown };
}

export interface KeptAnswersStore {
  get(asker: string, key: string): Promise<KeptAnswer | undefined>;
  /** Also lets go of those made before. */
  put(
    kept: KeptAnswer & { asker: string; key: string; madeUtcMs: number },
    goneBeforeUtcMs: number,
  ): Promise<void>;
}

export function keptAnswersStore(db: Kysely<Tables>): KeptAnswersStore {
  return {
    async get(asker, key) {
      const row = await db
        .selectFrom("kept_answer")
        .select(["request_digest", "answer"])
        .where("asker", "=", asker)
        .where("key", "=", key)
        .executeTakeFirst();
      return row && { requestDigest: row.request_digest, answer: JSON.parse(row.answer) };
    },
    async put({ asker, key, requestDigest, answer, madeUtcMs }, goneBeforeUtcMs) {
      await db.deleteFrom("kept_answer").where("made_utc_ms", "<", goneBeforeUtcMs).execute();
      await db
        .insertInto("kept_answer")
        .values({
          asker,
          key,
          request_digest: requestDigest,
          answer: JSON.stringify(answer),
          made_utc_ms: madeUtcMs,
        })
        .onConflict((clash) => clash.doNothing())
        .execute();
    },
  };
}
