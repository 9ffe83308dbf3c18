import type { JournalEntry, WaterGiven } from "../../../core/journal/entry.ts";
import type { Collection } from "../../../core/plan/collection.ts";
import { calendarDay } from "../../../core/site/local-days.ts";
import type { Words } from "../../words/words.ts";
import { isPlantedLongAgo } from "./planted-long-ago.ts";

interface Spoken {
  readonly collection: Collection;
  readonly words: Words;
}

/** One journal entry as a line: hour, pot, and what happened. */
export function entryText(entry: JournalEntry, spoken: Spoken): string {
  const { collection, words } = spoken;
  const clock = words.clock(entry.atUtcMs, collection.site.zone);
  const pot = potName(entry, collection);
  const what = entryWhat(entry, spoken);
  return pot === undefined
    ? words.say("entry.line-site", { clock, what })
    : words.say("entry.line", { clock, pot, what });
}

/** Pot, and what happened, without the hour. */
export function entryLine(entry: JournalEntry, spoken: Spoken): string {
  const pot = potName(entry, spoken.collection);
  const what = entryWhat(entry, spoken);
  return pot === undefined ? what : spoken.words.say("journal.line", { pot, what });
}

function potName({ potId }: JournalEntry, { pots }: Collection): string | undefined {
  return pots.find(({ id }) => id === potId)?.name ?? potId;
}

/** What happened, without hour and pot. */
export function entryWhat(entry: JournalEntry, { collection, words }: Spoken): string {
  const { body } = entry;
  const { say } = words;
  const spotName = (id: string) => collection.spots.find((spot) => spot.id === id)?.name ?? id;
  const mixName = (id: string) => collection.mixes.find((mix) => mix.id === id)?.name ?? id;
  const dayOf = (utcMs: number) => calendarDay(utcMs, collection.site.zone);
  const sinceDay = (utcMs: number) => words.day(dayOf(utcMs), { seenFrom: dayOf(entry.atUtcMs), amid: true });
  switch (body.kind) {
    case "planted":
      return say(isPlantedLongAgo(entry) ? "entry.planted-long-ago" : "entry.planted", {
        mix: mixName(body.mixId),
        roots: say(`roots.${body.roots}`),
      });
    case "watered":
      return wateredText(body.given, words);
    case "moved":
      return say("entry.moved", { place: spotName(body.toSpotId) });
    case "weighed":
      return say("entry.weighed", { massKg: body.massKg });
    case "checked":
      return checkedText(body, words);
    case "leaf":
      return say(`leaf.${body.state}`);
    case "trouble":
      return withText(say(`trouble.${body.sign}`), body.text);
    case "note":
      return body.text;
    case "treated":
      return withText(say("entry.treated"), body.text);
    case "photo":
      return withText(say("entry.photo"), body.text);
    case "gone":
      return say(`gone.${body.how}`);
    case "rain-gauge":
      return say("entry.rain-gauge", { rainMm: body.rainMm, sinceDay: sinceDay(body.sinceUtcMs) });
    case "thermometer":
      return say("entry.thermometer", { minC: body.minC, sinceDay: sinceDay(body.sinceUtcMs) });
    default:
      return say(`entry.${body.kind}`);
  }
}

function wateredText(given: WaterGiven, { say }: Words): string {
  switch (given.kind) {
    case "measured":
      return say("entry.watered.measured", { waterMl: given.waterMl });
    case "ran-through":
      return say("entry.watered.ran-through");
    case "poured-drained":
      return say("entry.watered.poured-drained", { pouredMl: given.pouredMl, drainedMl: given.drainedMl });
  }
}

function checkedText(body: { dryToCm?: number; feel?: string }, words: Words): string {
  const parts = [
    body.feel === undefined ? null : words.say(`feel.${body.feel as "light" | "middling" | "heavy"}`),
    body.dryToCm === undefined ? null : words.say("entry.dry-to", { dryToCm: body.dryToCm }),
  ].filter((part) => part !== null);
  return words.say("entry.checked", { found: words.list(parts) });
}

function withText(head: string, text: string | undefined): string {
  return text === undefined ? head : `${head}: ${text}`;
}
