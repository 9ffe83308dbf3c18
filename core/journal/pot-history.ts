import type { MixId } from "../mix/mix.ts";
import type { PotId } from "../pot/pot.ts";
import type { Problem } from "../problem.ts";
import type { SpotId } from "../site/spot.ts";
import type { EntryBody, JournalEntry } from "./entry.ts";

/** What an entry may refer to. */
export interface Known {
  readonly pots: ReadonlySet<PotId>;
  readonly spots: ReadonlySet<SpotId>;
  readonly mixes: ReadonlySet<MixId>;
  readonly nowUtcMs: number;
}

/** Entries that say nothing about the pot's state and may stand before planting or after the end. */
const HARMLESS = new Set<EntryBody["kind"]>(["note", "photo", "moved", "fed", "treated"]);

/**
 * One pot's settled entries, split into those that count and a note for each that does not: in the future, before the
 * pot was planted, after it was gone, with a figure that cannot be, or about something unknown.
 *
 * @param entries  settled, of this pot alone, in the order in which things happened
 */
export function potHistory(
  entries: readonly JournalEntry[],
  known: Known,
): { events: JournalEntry[]; gone: boolean; notes: Problem[] } {
  const events: JournalEntry[] = [];
  const notes: Problem[] = [];
  let planted = false;
  let gone = false;
  for (const entry of entries) {
    const fault = entryFault(entry, known) ?? orderFault(entry, { planted, gone });
    if (fault !== null) {
      notes.push({
        code: fault,
        path: ["journal", entry.id],
        data: { kind: entry.body.kind, potId: entry.potId },
      });
      if (!(fault === "before-planting" && HARMLESS.has(entry.body.kind))) continue;
    }
    if (entry.body.kind === "planted") planted = true;
    if (entry.body.kind === "gone") gone = true;
    events.push(entry);
  }
  return { events, gone, notes };
}

function entryFault({ atUtcMs, body }: JournalEntry, known: Known): string | null {
  if (!Number.isFinite(atUtcMs)) return "value-impossible";
  if (atUtcMs > known.nowUtcMs) return "future-dated";
  if (body.kind === "moved" && !known.spots.has(body.toSpotId)) return "spot-unknown";
  if (body.kind === "planted" && !known.mixes.has(body.mixId)) return "mix-unknown";
  return figureFault(body);
}

/** A pot that is gone has no further history; one not yet planted has none that bears on its water. */
function orderFault({ body }: JournalEntry, so: { planted: boolean; gone: boolean }): string | null {
  if (so.gone) return "pot-gone";
  if (!so.planted && body.kind !== "planted" && body.kind !== "gone") return "before-planting";
  return null;
}

function figureFault(body: EntryBody): string | null {
  if (body.kind === "weighed")
    return body.massKg > 0 && Number.isFinite(body.massKg) ? null : "value-impossible";
  if (body.kind === "checked") {
    const { dryToCm } = body;
    return dryToCm === undefined || (dryToCm >= 0 && Number.isFinite(dryToCm)) ? null : "value-impossible";
  }
  if (body.kind !== "watered") return null;
  const { given } = body;
  if (given.kind === "measured") return isAmount(given.waterMl) ? null : "value-impossible";
  if (given.kind === "ran-through") return null;
  if (!isAmount(given.pouredMl) || !isAmount(given.drainedMl)) return "value-impossible";
  return given.drainedMl > given.pouredMl ? "drained-more-than-poured" : null;
}

function isAmount(ml: number): boolean {
  return Number.isFinite(ml) && ml >= 0;
}
