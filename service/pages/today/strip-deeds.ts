import type { BriefDeed } from "../../brief/brief-value.ts";
import { groupedBy } from "../../brief/grouped-by.ts";
import type { Words } from "../../words/words.ts";
import type { StripDeed } from "../drawing/strip-deeds.tsx";

/** Deeds still open by hour and verb, for hanging from the strip: one is named, several are counted. */
export function stripDeeds(deeds: readonly BriefDeed[], { say, clock }: Words, zone: string): StripDeed[] {
  const timed = deeds.filter(({ dueUtcMs }) => dueUtcMs !== null);
  const groups = groupedBy(timed, ({ dueUtcMs, verb }) => `${dueUtcMs} ${verb}`);
  return [...groups.values()]
    .map((group) => {
      const { dueUtcMs, action, pot } = group[0]!;
      const time = clock(dueUtcMs!, zone);
      const verb = say(`strip-verb.${action}`);
      const short = say("strip.deed-many", { time, verb, potCount: group.length });
      const text = group.length === 1 ? say("strip.deed-one", { time, verb, pot }) : short;
      return { atUtcMs: dueUtcMs!, text, short };
    })
    .sort((a, b) => a.atUtcMs - b.atUtcMs);
}
