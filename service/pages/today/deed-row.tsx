import type { BriefDeed } from "../../brief/brief-value.ts";
import type { Words } from "../../words/words.ts";
import { tickId } from "./done-deeds.ts";

/** One deed with its reason and the box that ticks it. */
export function DeedRow({ deed, done, nonce, words }: DeedRowProps) {
  const details = [deed.amount, deed.place, deed.hour].filter((part) => part !== null);
  return (
    <li class={done ? "deed deed-done" : "deed"}>
      <div class="deed-text">
        <p class="deed-head">
          <span class="verb">{deed.verb}</span>{" "}
          <a href={`/pots/${encodeURIComponent(deed.potId)}`}>{deed.pot}</a>
        </p>
        {details.length > 0 && <p class="deed-facts">{details.join(", ")}</p>}
        <p class="deed-reason">
          {deed.reason} <span class="sure">{words.say("deed.sure", { word: deed.confidence })}</span>
        </p>
        {deed.notes.map((note) => (
          <p class="deed-note">{note}</p>
        ))}
      </div>
      {done ? (
        <p class="ticked">{words.say("deed.done")}</p>
      ) : (
        <TickForm deed={deed} nonce={nonce} words={words} />
      )}
    </li>
  );
}

interface DeedRowProps {
  readonly deed: BriefDeed;
  readonly done: boolean;
  /** Makes the entry of this tick one entry, however often it is sent. */
  readonly nonce: string;
  readonly words: Words;
}

/** The box. A plain form, so that it works without script. */
export function TickForm({ deed, nonce, words }: Omit<DeedRowProps, "done">) {
  return (
    <form method="post" action="/done" class="tick">
      <input type="hidden" name="deed" value={tickText(deed, nonce)} />
      <button type="submit" aria-label={words.say("deed.tick-label", { sentence: deed.sentence })}>
        {words.say("deed.tick")}
      </button>
    </form>
  );
}

/** A tick in one field, so that one form can carry a whole bench. */
export function tickText(deed: BriefDeed, nonce: string): string {
  return new URLSearchParams({
    entryId: tickId(deed.action, nonce),
    potId: deed.potId,
    action: deed.action,
    ...(deed.amountMl === null || deed.untilItRunsThrough ? {} : { waterMl: String(deed.amountMl) }),
    ...(deed.toSpotId === null ? {} : { toSpotId: deed.toSpotId }),
  }).toString();
}
