import type { BriefDeed, DeedGroup } from "./brief-value.ts";
import { groupedBy } from "./grouped-by.ts";
import type { Naming } from "./naming.ts";

/** From so many alike a stop says "5 pots" and lists them; fewer read better one by one. Chosen by us. */
const GROUPED_FROM = 4;

/** Deeds of one stop, those alike in verb, place, hour, reason and certainty as one; in the order of their first. */
export function deedGroups(deeds: readonly BriefDeed[], naming: Naming): DeedGroup[] {
  const alike = groupedBy(deeds, ({ action, place, hour, reasonInShort, confidence }) =>
    JSON.stringify([action, place, hour, reasonInShort, confidence]),
  );
  return [...alike.values()].flatMap((group) =>
    group.length < GROUPED_FROM ? group.map(alone) : [together(group, naming)],
  );
}

function alone(deed: BriefDeed): DeedGroup {
  const { sentence, reason, confidence, notes } = deed;
  return { sentence, reason, confidence, notes, items: [], deeds: [deed] };
}

function together(deeds: readonly BriefDeed[], { words }: Naming): DeedGroup {
  const { verb, place, hour, reasonInShort: reason, confidence } = deeds[0]!;
  const potCount = deeds.reduce((sum, deed) => sum + deed.potCount, 0);
  const shared = deeds[0]!.notes.filter((note) => deeds.every(({ notes }) => notes.includes(note)));
  const details = [words.say("deed.pot-count", { potCount }), place, hour];
  return {
    sentence: words.say("deed.sentence", {
      verb,
      details: details.filter((part) => part !== null).join(", "),
    }),
    reason,
    confidence,
    notes: shared,
    items: deeds.map((deed) => itemText(deed, shared)),
    deeds,
  };
}

/** The pot with its amount, and what could hurt at it alone. */
function itemText({ pot, amount, notes }: BriefDeed, shared: readonly string[]): string {
  const facts = amount === null ? pot : `${pot}, ${amount}`;
  const own = notes.filter((note) => !shared.includes(note));
  return own.length === 0 ? facts : `${facts} (${own.join(" ")})`;
}
