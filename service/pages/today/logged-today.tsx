import type { Words } from "../../words/words.ts";

export interface LoggedToday {
  readonly entryId: string;
  readonly text: string;
}

interface LoggedProps {
  /** Newest first. */
  readonly logged: readonly LoggedToday[];
  readonly newId: () => string;
  readonly words: Words;
}

/** At the head: that something was logged, and where. */
export function LoggedDoor({ logged, words: { say } }: Pick<LoggedProps, "logged" | "words">) {
  if (logged.length === 0) return null;
  return (
    <p>
      <a href="#logged" class="logged-door">
        {say("today.logged", { entryCount: logged.length })}
      </a>
    </p>
  );
}

/** More than this are folded, so that what else the day asks stays in sight. Chosen by us. */
const LOGGED_OPEN_AT_MOST = 6;

/** What was done today, each with the way to take it back. */
export function Logged({ logged, newId, words }: LoggedProps) {
  if (logged.length === 0) return null;
  return (
    <details class="stop logged" id="logged" open={logged.length <= LOGGED_OPEN_AT_MOST}>
      <summary>
        <h2>{words.say("today.logged", { entryCount: logged.length })}</h2>
      </summary>
      <ul class="plain">
        {logged.map(({ entryId, text }) => (
          <li>
            <p>{text}</p>
            <form method="post" action="/undo">
              <input type="hidden" name="entryId" value={`undo.${newId()}`} />
              <input type="hidden" name="ofEntryId" value={entryId} />
              <button type="submit" class="quiet" aria-label={words.say("today.undo-label", { text })}>
                {words.say("today.undo")}
              </button>
            </form>
          </li>
        ))}
      </ul>
    </details>
  );
}
