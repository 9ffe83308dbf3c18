import { calendarDay } from "../../../core/site/local-days.ts";
import type { Words } from "../../words/words.ts";

/** "Wed 25 Nov, 14:00". */
export function whenText(utcMs: number, zone: string, words: Words): string {
  return words.say("entry.when", {
    dayName: words.day(calendarDay(utcMs, zone), "short"),
    clock: words.clock(utcMs, zone),
  });
}
