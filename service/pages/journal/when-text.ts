import type { JournalEntry } from "../../../core/journal/entry.ts";
import { calendarDay } from "../../../core/site/local-days.ts";
import type { CalendarDay } from "../../../core/site/site.ts";
import type { Words } from "../../words/words.ts";
import { isPlantedLongAgo } from "./planted-long-ago.ts";

/** From where an instant is told. */
interface SeenFrom {
  readonly zone: string;
  readonly today: CalendarDay;
}

/** "Wed 25 Nov, 14:00", with the year where it is not that of `today`. */
export function whenText(utcMs: number, at: SeenFrom, words: Words): string {
  return words.say("entry.when", {
    dayName: words.day(calendarDay(utcMs, at.zone), { width: "short", seenFrom: at.today }),
    clock: words.clock(utcMs, at.zone),
  });
}

/** When an entry happened; of a planting long ago there is no day to tell. */
export function entryWhen(entry: JournalEntry, at: SeenFrom, words: Words): string {
  return isPlantedLongAgo(entry) ? words.say("planted.long-ago") : whenText(entry.atUtcMs, at, words);
}
