import type { Kysely } from "kysely";
import { z } from "zod";
import type { WordChoice } from "../words/house-words.ts";
import { isLocale } from "../words/is-locale.ts";
import { readDocument, writeDocument } from "./documents.ts";
import type { Tables } from "./tables.ts";

/** What was chosen for the house as a whole, whatever its sites. */
export interface ChoicesStore {
  /** Null until somebody chose: the settings count till then. */
  wordChoice(): Promise<WordChoice | null>;
  putWordChoice(choice: WordChoice): Promise<void>;
}

const WORD_CHOICE = "words";
export const WordChoiceSchema = z.strictObject({
  locale: z.string().refine(isLocale),
  units: z.enum(["metric", "us"]),
});

export function choicesStore(db: Kysely<Tables>): ChoicesStore {
  return {
    async wordChoice() {
      const row = await db
        .selectFrom("house")
        .select("value")
        .where("name", "=", WORD_CHOICE)
        .executeTakeFirst();
      return row ? readDocument(WordChoiceSchema, row.value, "house words") : null;
    },
    async putWordChoice(choice) {
      const value = writeDocument(WordChoiceSchema, choice);
      await db
        .insertInto("house")
        .values({ name: WORD_CHOICE, value })
        .onConflict((clash) => clash.column("name").doUpdateSet({ value }))
        .execute();
    },
  };
}
