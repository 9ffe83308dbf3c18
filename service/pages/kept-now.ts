import type { JournalEntry } from "../../core/journal/entry.ts";
import type { Words } from "../words/words.ts";
import { entryWhat } from "./journal/entry-text.ts";
import type { SiteNow } from "./site-now.ts";

/** What a form kept, to be told on the page to which it led. */
export interface KeptNow {
  readonly id: string;
  readonly text: string;
  /** How many entries can be taken back; a pot that was entered cannot. */
  readonly entryCount: number;
}

/** The page to which a form leads, with the id of what it kept: so it is told there, and nothing is remembered. */
export function keptAddress(path: string, id: string): string {
  return `${path}${path.includes("?") ? "&" : "?"}kept=${encodeURIComponent(id)}#kept`;
}

/** What the id of an address names and still stands: entries of one form, or a pot, or the pots of one table. */
export function keptNow(now: SiteNow, id: string, words: Words): KeptNow | null {
  const entries = entriesKept(now, id);
  const text = entries[0] ? entriesText(entries, { now, words }) : potsKeptText(now, id, words);
  return text === null ? null : { id, text, entryCount: entries.length };
}

/** Entries that one form made, one or one a pot, and that still stand. */
export function entriesKept({ journal }: Pick<SiteNow, "journal">, id: string): JournalEntry[] {
  return journal.filter((entry) => entry.id === id || isOneOf(entry.id, { id, kind: "log", mark: "." }));
}

function entriesText(
  [first, ...rest]: readonly JournalEntry[],
  { now: { collection }, words }: { now: SiteNow; words: Words },
): string {
  const what = entryWhat(first!, { collection, words });
  const pot = collection.pots.find(({ id }) => id === first!.potId)?.name;
  return rest.length === 0 && pot !== undefined
    ? words.say("kept.entry", { pot, what })
    : words.say("pots.kept", { what, potCount: 1 + rest.length });
}

function potsKeptText({ collection }: SiteNow, id: string, { say }: Words): string | null {
  const own = collection.pots.filter((pot) => pot.id === id);
  const pots =
    own.length > 0 ? own : collection.pots.filter((pot) => isOneOf(pot.id, { id, kind: "pot", mark: "-" }));
  return pots[0] ? say("kept.pots", { potCount: pots.length, pot: pots[0].name }) : null;
}

/** Whether an id was made from that of a form which made many things. */
function isOneOf(made: string, { id, kind, mark }: { id: string; kind: string; mark: string }): boolean {
  return id.startsWith(`${kind}.`) && id.length > 8 && made.startsWith(`${id}${mark}`);
}
