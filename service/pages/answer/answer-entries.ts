import { createHash } from "node:crypto";
import type { EntryBody, JournalEntry } from "../../../core/journal/entry.ts";
import type { BriefDeed } from "../../brief/brief-value.ts";
import { bodyOfTick, tickId } from "../today/done-deeds.ts";
import { type AskedDeed, laterId, type OpenAnswer } from "./open-answer.ts";

type NewEntry = Pick<JournalEntry, "id" | "potId" | "body">;

/** What was really done of a deed, as told in the form of a "log" link. */
export interface ToldDeed {
  readonly isDone: boolean;
  /** Water that was given; undefined where it was not measured. */
  readonly waterMl?: number | undefined;
}

/**
 * The journal entries of an answer, one a deed. Ids follow from plan, pot and deed, so that the same answer by mail, by
 * notification, twice, or by two people is one entry; what is in the journal already is left alone.
 * @param told  by the deed's place in the list; all as planned when left out
 */
export function answerEntries(answer: OpenAnswer, told?: readonly ToldDeed[]): NewEntry[] {
  const { claims, words } = answer;
  return answer.deeds.flatMap((asked, index) => {
    const { deed } = asked;
    if (claims.purpose === "not-today") {
      if (asked.state !== "open") return [];
      const text = words.say("answer.not-today.note", { sentence: deed.sentence });
      return [entryFor(answer, { deed, idOf: laterId, body: { kind: "note", text } })];
    }
    const said = told?.[index] ?? { isDone: true };
    if (asked.state === "done" || !said.isDone) return [];
    return [entryFor(answer, { deed, idOf: tickId, body: bodyDone(asked, { told: told?.[index], answer }) })];
  });
}

function bodyDone(
  { deed }: AskedDeed,
  { told, answer: { words } }: { told: ToldDeed | undefined; answer: OpenAnswer },
): EntryBody {
  const planned = deed.untilItRunsThrough ? undefined : (deed.amountMl ?? undefined);
  return bodyOfTick(
    {
      action: deed.action,
      waterMl: told ? told.waterMl : planned,
      toSpotId: deed.toSpotId ?? undefined,
    },
    words.say(`verb.${deed.action}`),
  );
}

function entryFor(
  { plan, claims, takenIds }: OpenAnswer,
  of: { deed: BriefDeed; idOf: (action: BriefDeed["action"], nonce: string) => string; body: EntryBody },
): NewEntry {
  const { potId, action } = of.deed;
  const said = JSON.stringify([plan.siteId, claims.madeUtcMs, potId, action]);
  const nonce = createHash("sha256").update(said).digest("hex").slice(0, 20);
  // An entry that was taken back keeps its id for ever; telling it again is another one.
  let id = of.idOf(action, nonce);
  for (let count = 2; takenIds.has(id); count++) id = of.idOf(action, `${nonce}-${count}`);
  return { id, potId, body: of.body };
}
