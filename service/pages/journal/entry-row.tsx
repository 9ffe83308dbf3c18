import type { JournalEntry } from "../../../core/journal/entry.ts";
import type { Words } from "../../words/words.ts";
import { PhotoOf } from "../photos/photo-of.tsx";
import { kindOfBody } from "../pots/typed-of-body.ts";

interface EntryRowProps {
  readonly entry: JournalEntry;
  readonly when: string;
  readonly text: string;
  /** Where taking it back leads. */
  readonly backTo: string;
  readonly undoId: string;
  /** Why it does not fit what was believed of the pot, and what to ask. */
  readonly doubt?: string | undefined;
  readonly words: Words;
}

/** An entry with the ways to set it right. */
export function EntryRow({ entry, when, text, backTo, undoId, doubt, words }: EntryRowProps) {
  const { say } = words;
  return (
    <li>
      <p>
        <span class="when">{when}</span> {text}
      </p>
      {doubt !== undefined && <p class="deed-note">{doubt}</p>}
      <PhotoOf entry={entry} alt={`${when} ${text}`} />
      <div class="entry-doors">
        {kindOfBody(entry.body) !== null && (
          <a
            href={`/journal/${encodeURIComponent(entry.id)}/correct`}
            aria-label={say("correct.label", { text: `${when} ${text}` })}
          >
            {say("correct.door")}
          </a>
        )}
        <form method="post" action="/undo">
          <input type="hidden" name="entryId" value={`undo.${undoId}`} />
          <input type="hidden" name="ofEntryId" value={entry.id} />
          <input type="hidden" name="backTo" value={backTo} />
          <button
            type="submit"
            class="quiet"
            aria-label={say("today.undo-label", { text: `${when} ${text}` })}
          >
            {say("today.undo")}
          </button>
        </form>
      </div>
    </li>
  );
}
