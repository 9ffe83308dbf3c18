import type { Units } from "./units.ts";
import { type Words, wordsFor } from "./words.ts";

/** In what language, numerals and hours, and in which measures, somebody is spoken to. */
export interface WordChoice {
  /** BCP 47, numerals and hours as its own extensions: "bn-IN-u-hc-h23-nu-latn". */
  readonly locale: string;
  readonly units: Units;
}

/** Words that whoever holds them may keep: after `choose` every sentence is said in the new way. */
export interface HouseWords extends Words {
  readonly choice: WordChoice;
  choose(choice: WordChoice): void;
}

export function houseWords(first: WordChoice): HouseWords {
  let choice: WordChoice = { locale: first.locale, units: first.units };
  let now = wordsFor(first.locale, first.units);
  return {
    get choice() {
      return choice;
    },
    get language() {
      return now.language;
    },
    get locale() {
      return now.locale;
    },
    get units() {
      return now.units;
    },
    choose(next) {
      choice = next;
      now = wordsFor(next.locale, next.units);
    },
    say: (key, args) => now.say(key, args),
    trySay: (key, args) => now.trySay(key, args),
    figure: (name, value) => now.figure(name, value),
    clock: (utcMs, zone) => now.clock(utcMs, zone),
    day: (day, manner) => now.day(day, manner),
    weekday: (day) => now.weekday(day),
    when: (utcMs, at) => now.when(utcMs, at),
    list: (items) => now.list(items),
    number: (value) => now.number(value),
  };
}
