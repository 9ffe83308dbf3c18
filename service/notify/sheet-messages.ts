import { sheetOf, sheetText } from "../brief/sheet.ts";
import type { NewMessage } from "../store/outbox-store.ts";
import { type AheadInput, aheadMessage } from "./weekly-messages.ts";

/** On the first day of a hand-over the whole sheet goes to whoever looks after the pots. */
export function sheetMessages(input: AheadInput): NewMessage[] {
  const { plan, collection, ways } = input;
  return ways.flatMap((way) => {
    if (way.cover?.fromDay !== plan.forDay) return [];
    const sheet = sheetOf({ plan, collection, words: way.words }, way.cover);
    return aheadMessage(input, { way, kind: "sheet", subject: sheet.title, text: sheetText(sheet) });
  });
}
