import type { Kysely } from "kysely";
import { z } from "zod";
import type { WordChoice } from "../words/house-words.ts";
import { isLocale } from "../words/is-locale.ts";
import { readDocument, writeDocument } from "./documents.ts";
import { type Handover, HandoverSchema } from "./handover.ts";
import type { Tables } from "./tables.ts";

/** What was chosen for the house as a whole, whatever its sites. */
export interface ChoicesStore {
  /** Null until somebody chose: the settings count till then. */
  wordChoice(): Promise<WordChoice | null>;
  putWordChoice(choice: WordChoice): Promise<void>;
  /** Who looks after the pots and when, earliest first; those that are over included. */
  handovers(): Promise<Handover[]>;
  putHandovers(handovers: readonly Handover[]): Promise<void>;
  /** Those who want no message on a morning that asks for nothing, by person. */
  skipEmpty(): Promise<string[]>;
  putSkipEmpty(personIds: readonly string[]): Promise<void>;
}

export const WordChoiceSchema = z.strictObject({
  locale: z
    .string()
    .max(100)
    .refine(isLocale, { params: { code: "no-such-locale" } })
    .describe("BCP 47, with numerals and hours as its own extensions: bn-IN-u-hc-h23-nu-latn."),
  units: z.enum(["metric", "us"]),
});
const HandoversSchema = z.array(HandoverSchema);
const SkipEmptySchema = z.array(z.string());

export function choicesStore(db: Kysely<Tables>): ChoicesStore {
  const read = async <T>(name: string, schema: z.ZodType<T>): Promise<T | null> => {
    const row = await db.selectFrom("house").select("value").where("name", "=", name).executeTakeFirst();
    return row ? readDocument(schema, row.value, `choice ${name}`) : null;
  };
  const put = async <T>(name: string, schema: z.ZodType<T>, given: T): Promise<void> => {
    const value = writeDocument(schema, given);
    await db
      .insertInto("house")
      .values({ name, value })
      .onConflict((clash) => clash.column("name").doUpdateSet({ value }))
      .execute();
  };
  return {
    wordChoice: () => read("words", WordChoiceSchema),
    putWordChoice: (choice) => put("words", WordChoiceSchema, choice),
    handovers: async () => (await read("handovers", HandoversSchema)) ?? [],
    putHandovers: (handovers) =>
      put(
        "handovers",
        HandoversSchema,
        [...handovers].sort((a, b) => (a.fromDay < b.fromDay ? -1 : 1)),
      ),
    skipEmpty: async () => (await read("skip-empty", SkipEmptySchema)) ?? [],
    putSkipEmpty: (personIds) => put("skip-empty", SkipEmptySchema, [...personIds]),
  };
}
