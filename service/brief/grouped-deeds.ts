import type { BriefDeed } from "./brief-value.ts";
import { waterText } from "./deed-line.ts";
import { groupedBy } from "./grouped-by.ts";
import type { Naming } from "./naming.ts";

/** Deeds that differ only in their pot as one line each: "Carry under cover: Fig, Aloe and Lemon, to Shed, by 14:00." */
export function groupedDeeds(deeds: readonly BriefDeed[], naming: Naming): string[] {
  return alike(deeds, ({ verb, amount, place, hour }) => [verb, amount, place, hour]).map((group) =>
    groupSentence(group, naming),
  );
}

/** The same with the handling behind each line; deeds that are handled otherwise stand apart. */
export function handledDeeds(deeds: readonly BriefDeed[], naming: Naming): string[] {
  return alike(deeds, ({ verb, amount, place, hour, handling }) => [verb, amount, place, hour, handling]).map(
    (group) => [groupSentence(group, naming), ...group[0]!.handling].join(" "),
  );
}

function alike(deeds: readonly BriefDeed[], told: (deed: BriefDeed) => unknown): BriefDeed[][] {
  return [...groupedBy(deeds, (deed) => JSON.stringify(told(deed))).values()];
}

function groupSentence(group: readonly BriefDeed[], { words }: Naming): string {
  const [first] = group;
  // Of several pots each gets the amount; one alone has said so where it stands for several.
  const amount =
    group.length > 1 && first!.amount ? waterText({ ...first!, isEach: true }, words) : first!.amount;
  const details = [words.list(group.map(({ pot }) => pot)), amount, first!.place, first!.hour];
  return words.say("deed.sentence", {
    verb: first!.verb,
    details: details.filter((part) => part !== null).join(", "),
  });
}
