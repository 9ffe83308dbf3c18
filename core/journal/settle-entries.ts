import type { Problem } from "../problem.ts";
import type { EntryBody, EntryId, JournalEntry } from "./entry.ts";

/** What became of one id: the entry as it now stands, whether it counts, and which entry it is about. */
interface Standing {
  entry: JournalEntry;
  counts: boolean;
  readonly aboutId: EntryId | null;
}

/**
 * The journal as it now stands: corrections and undos applied, repeats dropped, in the order in which things happened.
 * Nothing is refused without a note, and no entry is changed in place.
 *
 * An undo of an undo or of a correction takes back just that; the newest correction that still counts holds.
 */
export function settleEntries(entries: readonly JournalEntry[]): {
  entries: JournalEntry[];
  notes: Problem[];
} {
  const notes: Problem[] = [];
  const first = withoutRepeats(entries, notes);
  const standings = new Map(first.map((entry) => [entry.id, standingOf(entry)]));
  const about = first.filter((entry) => aboutIdOf(entry.body) !== null).sort(byRecorded);
  for (const entry of about) noteBadAim({ entry, standings, notes });
  applyUndos(about, standings);
  applyCorrections(about, standings);
  const settled = [...standings.values()]
    .filter((standing) => standing.counts && standing.aboutId === null)
    .map((standing) => standing.entry);
  return { entries: settled.sort(byHappening), notes };
}

function standingOf(entry: JournalEntry): Standing {
  return { entry, counts: true, aboutId: aboutIdOf(entry.body) };
}

function aboutIdOf(body: EntryBody): EntryId | null {
  return body.kind === "correction" || body.kind === "undo" ? body.ofEntryId : null;
}

/** The first recorded of each id; a repeat with other content is told, a plain repeat as well. */
function withoutRepeats(entries: readonly JournalEntry[], notes: Problem[]): JournalEntry[] {
  const kept = new Map<EntryId, JournalEntry>();
  for (const entry of [...entries].sort(byRecorded)) {
    const before = kept.get(entry.id);
    if (before === undefined) kept.set(entry.id, entry);
    else {
      const same = JSON.stringify(before.body) === JSON.stringify(entry.body);
      notes.push(note(same ? "entry-repeated" : "entry-id-used-twice", entry));
    }
  }
  return [...kept.values()];
}

/** An entry about an unknown one, about itself, or that would turn an entry into one about entries does not count. */
function noteBadAim(input: {
  entry: JournalEntry;
  standings: Map<EntryId, Standing>;
  notes: Problem[];
}): void {
  const { entry, standings, notes } = input;
  const aim = aboutIdOf(entry.body)!;
  const code = !standings.has(aim)
    ? "entry-unknown"
    : chainIsRound(entry.id, standings)
      ? "entry-about-itself"
      : entry.body.kind === "correction" && aboutIdOf(entry.body.body) !== null
        ? "correction-of-wrong-kind"
        : null;
  if (code === null) return;
  notes.push(note(code, entry));
  standings.get(entry.id)!.counts = false;
}

function chainIsRound(startId: EntryId, standings: ReadonlyMap<EntryId, Standing>): boolean {
  const seen = new Set<EntryId>();
  let id: EntryId | null = startId;
  while (id !== null) {
    if (seen.has(id)) return true;
    seen.add(id);
    id = standings.get(id)?.aboutId ?? null;
  }
  return false;
}

/** An undo counts unless a later undo that counts takes it back, so they are read from the newest to the oldest. */
function applyUndos(about: readonly JournalEntry[], standings: Map<EntryId, Standing>): void {
  for (const entry of [...about].reverse()) {
    if (entry.body.kind !== "undo" || !standings.get(entry.id)!.counts) continue;
    standings.get(entry.body.ofEntryId)!.counts = false;
  }
}

function applyCorrections(about: readonly JournalEntry[], standings: Map<EntryId, Standing>): void {
  for (const entry of about) {
    if (entry.body.kind !== "correction" || !standings.get(entry.id)!.counts) continue;
    const target = rootOf(entry.body.ofEntryId, standings);
    if (target.entry.body.kind === "undo") continue;
    const { atUtcMs, body } = entry.body;
    const potId = entry.body.potId ?? target.entry.potId;
    target.entry = { ...target.entry, atUtcMs, body, ...(potId === undefined ? {} : { potId }) };
  }
}

/** A correction of a correction is one of the entry at the root. */
function rootOf(id: EntryId, standings: ReadonlyMap<EntryId, Standing>): Standing {
  let standing = standings.get(id)!;
  while (standing.entry.body.kind === "correction") standing = standings.get(standing.entry.body.ofEntryId)!;
  return standing;
}

function byRecorded(a: JournalEntry, b: JournalEntry): number {
  return a.recordedUtcMs - b.recordedUtcMs || textOrder(a.id, b.id);
}

function byHappening(a: JournalEntry, b: JournalEntry): number {
  return a.atUtcMs - b.atUtcMs || byRecorded(a, b);
}

/** Independent of the machine's language. */
function textOrder(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

function note(code: string, entry: JournalEntry): Problem {
  return { code, path: ["journal", entry.id], data: { kind: entry.body.kind } };
}
