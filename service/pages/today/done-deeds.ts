import type { EntryBody, JournalEntry } from "../../../core/journal/entry.ts";
import type { Action } from "../../../core/plan/deed.ts";
import type { BriefDeed } from "../../brief/brief-value.ts";

/** Ids of ticks begin with this and the action, so that a deed without an entry kind of its own can be told. */
export function tickId(action: Action, nonce: string): string {
  return `tick.${action}.${nonce}`;
}

/** Tells of any deed whether the journal already holds it, from the instant at which the plan was issued. */
export function doneSince(
  journal: readonly JournalEntry[],
  sinceUtcMs: number,
): (deed: BriefDeed) => boolean {
  const since = journal.filter(({ atUtcMs }) => atUtcMs >= sinceUtcMs);
  return (deed) => since.some((entry) => entry.potId === deed.potId && fulfils(entry, deed));
}

function fulfils({ id, body }: JournalEntry, deed: BriefDeed): boolean {
  if (id.startsWith(`tick.${deed.action}.`)) return true;
  if (deed.action === "water") return body.kind === "watered";
  if (deed.action === "carry-in" || deed.action === "carry-out") {
    return body.kind === "moved" && body.toSpotId === deed.toSpotId;
  }
  return false;
}

/** What a tick writes into the journal. `noteText` is for deeds that the journal has no kind for. */
export function bodyOfTick(
  tick: { action: Action; waterMl?: number | undefined; toSpotId?: string | undefined },
  noteText: string,
): EntryBody {
  if (tick.action === "water" || tick.action === "soak-slowly") {
    const { waterMl } = tick;
    return {
      kind: "watered",
      given: waterMl === undefined ? { kind: "ran-through" } : { kind: "measured", waterMl },
    };
  }
  if (tick.toSpotId !== undefined) return { kind: "moved", toSpotId: tick.toSpotId };
  return { kind: "note", text: noteText };
}
