import type { Action } from "../../../core/plan/deed.ts";
import type { BriefDeed } from "../../brief/brief-value.ts";
import type { Words } from "../../words/words.ts";
import type { LogKind } from "../pots/log-body.ts";
import { tickId } from "./done-deeds.ts";

/** The entry by which a deed that was done in another way is told; a note for the rest. */
const AMENDED_AS: Partial<Record<Action, LogKind>> = {
  water: "watered",
  "soak-slowly": "watered",
  "carry-in": "moved",
  "carry-out": "moved",
};

/** One deed with its reason, the box that ticks it, and the way to tell that it was done otherwise. */
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
        <div class="deed-ways">
          <TickForm deed={deed} nonce={nonce} words={words} />
          <a
            href={`/pots/${encodeURIComponent(deed.potId)}?log=${AMENDED_AS[deed.action] ?? "note"}#log`}
            aria-label={words.say("deed.otherwise-label", { pot: deed.pot })}
          >
            {words.say("deed.otherwise")}
          </a>
        </div>
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
    <form
      method="post"
      action="/done"
      class="tick"
      data-back={words.say("today.undo-label", { text: deed.sentence })}
    >
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
