import type { BriefDeed } from "./brief-value.ts";
import { waterText } from "./deed-line.ts";
import { groupedBy } from "./grouped-by.ts";
import type { Naming } from "./naming.ts";

/** Deeds that differ only in their pot as one line each: "Carry under cover: Fig, Aloe and Lemon, to Shed, by 14:00." */
export function groupedDeeds(deeds: readonly BriefDeed[], { words }: Naming): string[] {
  const alike = groupedBy(deeds, ({ verb, amount, place, hour }) =>
    JSON.stringify([verb, amount, place, hour]),
  );
  return [...alike.values()].map((group) => {
    const [first] = group;
    // Of several pots each gets the amount; one alone has said so where it stands for several.
    const amount =
      group.length > 1 && first!.amount ? waterText({ ...first!, isEach: true }, words) : first!.amount;
    const details = [words.list(group.map(({ pot }) => pot)), amount, first!.place, first!.hour];
    return words.say("deed.sentence", {
      verb: first!.verb,
      details: details.filter((part) => part !== null).join(", "),
    });
  });
}
