import type { Words } from "../words/words.ts";
import type { BriefStop } from "./brief-value.ts";
import { groupedBy } from "./grouped-by.ts";

/** Kinds of deeds named in a headline; more do not fit above a notification. Chosen by us. */
const NAMED_AT_MOST = 3;

/** "Carry under cover: 2, by 13:00; Water: 6", what is due first at the head; the lead where nothing is to be done. */
export function headline(
  stops: readonly BriefStop[],
  { lead, words }: { lead: string; words: Words },
): string {
  const due = ({ dueUtcMs }: { dueUtcMs: number | null }) => dueUtcMs ?? Number.MAX_SAFE_INTEGER;
  const deeds = stops.flatMap((stop) => stop.deeds).sort((a, b) => due(a) - due(b));
  if (deeds.length === 0) return lead;
  return [...groupedBy(deeds, ({ verb }) => verb)]
    .slice(0, NAMED_AT_MOST)
    .map(([verb, alike]) => {
      const potCount = alike.reduce((sum, deed) => sum + deed.potCount, 0);
      const part = words.say("headline.part", { verb, potCount });
      const { hour } = alike[0]!;
      return hour === null ? part : `${part}, ${hour}`;
    })
    .join("; ");
}
