import type { Naming } from "./naming.ts";

const NAMED_AT_MOST = 4;

/** Pots by name, the first few and how many more. */
export function potsText(potIds: readonly string[], { words, potName }: Naming): string {
  const named = potIds.slice(0, NAMED_AT_MOST).map(potName);
  const restCount = potIds.length - named.length;
  return words.list(restCount > 0 ? [...named, words.say("caution.more-pots", { restCount })] : named);
}
