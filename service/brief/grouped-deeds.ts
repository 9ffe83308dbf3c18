import type { BriefDeed } from "./brief-value.ts";
import { groupedBy } from "./grouped-by.ts";
import type { Naming } from "./naming.ts";

/** Deeds that differ only in their pot as one line each: "Carry under cover: Fig, Aloe and Lemon, to Shed, by 14:00." */
export function groupedDeeds(deeds: readonly BriefDeed[], { words }: Naming): string[] {
  const alike = groupedBy(deeds, ({ verb, amount, place, hour }) =>
    JSON.stringify([verb, amount, place, hour]),
  );
  return [...alike.values()].map((group) => {
    const [first] = group;
    const details = [words.list(group.map(({ pot }) => pot)), first!.amount, first!.place, first!.hour];
    return words.say("deed.sentence", {
      verb: first!.verb,
      details: details.filter((part) => part !== null).join(", "),
    });
  });
}
