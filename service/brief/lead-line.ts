import type { Words } from "../words/words.ts";
import type { PotCounts } from "./pot-counts.ts";

/** How much there is to do, and how the other pots stand: every pot is in one of the parts. */
export function leadLine(counts: PotCounts & { readonly deedCount: number }, { say }: Words): string {
  const { deedCount, lookCount, dryCount, restCount } = counts;
  if (deedCount + lookCount === 0) return say("brief.lead.nothing", { allCount: counts.allCount });
  const parts = [
    ...(deedCount > 0 ? [say("brief.lead.deeds", { deedCount, busyCount: counts.busyCount })] : []),
    ...(lookCount > 0 ? [say("brief.lead.look", { lookCount })] : []),
    ...(dryCount > 0 ? [say("brief.lead.dry", { dryCount })] : []),
    ...(restCount > 0 ? [say("brief.lead.rest", { restCount })] : []),
  ];
  return say("brief.lead", { parts: parts.join("; ") });
}
