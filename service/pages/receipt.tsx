import type { Words } from "../words/words.ts";
import type { KeptNow } from "./kept-now.ts";

interface ReceiptProps {
  readonly kept: KeptNow | null;
  /** The page on which it stands; taking it back leads here again. */
  readonly backTo: string;
  readonly newId: () => string;
  readonly words: Words;
}

/** What was kept just now, with the way to take it back where there is one. */
export function Receipt({ kept, backTo, newId, words: { say } }: ReceiptProps) {
  if (!kept) return null;
  return (
    <form method="post" action="/pots/take-back" class="kept" id="kept">
      <p role="status">{kept.text}</p>
      {kept.entryCount > 0 && (
        <>
          <input type="hidden" name="formId" value={newId()} />
          <input type="hidden" name="of" value={kept.id} />
          <input type="hidden" name="backTo" value={backTo} />
          <button type="submit" class="quiet">
            {say(kept.entryCount > 1 ? "pots.take-back" : "today.undo")}
          </button>
        </>
      )}
    </form>
  );
}
