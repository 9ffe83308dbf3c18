import type { BriefCaution, BriefStop } from "./brief-value.ts";
import type { Naming } from "./naming.ts";

/**
 * The brief of a day without deeds as one line. Null where something is to be done or read, where a caution binds the
 * day, and where the brief came late or days before it had none: those are told in full.
 */
export function emptyLine(
  of: {
    readonly title: string;
    readonly lead: string;
    readonly timing: readonly string[];
    readonly stops: readonly BriefStop[];
    readonly cautions: readonly BriefCaution[];
    readonly dryCount: number;
    /** What the grower noted, read back, and what begins or ends after planting. */
    readonly toldCount: number;
  },
  { words }: Naming,
): string | null {
  const asks = of.stops.length > 0 || of.timing.length > 0 || of.cautions.some(({ isUrgent }) => isUrgent);
  if (asks || of.toldCount > 0) return null;
  const { title, lead, dryCount } = of;
  return dryCount === 0
    ? words.say("brief.empty", { title, lead })
    : words.say("brief.empty-dry", { title, lead, dryCount });
}
