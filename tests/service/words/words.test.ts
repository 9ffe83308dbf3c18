import { describe, expect, it } from "vitest";
import type { CalendarDay } from "../../../core/site/site.ts";
import { choiceOfParts, partsOfChoice } from "../../../service/words/choice-parts.ts";
import { houseWords } from "../../../service/words/house-words.ts";
import { LANGUAGES, ownNameOf } from "../../../service/words/languages.ts";
import { wordsFor } from "../../../service/words/words.ts";

const plain = (text: string) => text.replaceAll(/[\u00a0\u202f]/g, " ");
const TWO_PM = Date.parse("2027-05-12T14:05Z");
const DAY = "2027-05-12" as CalendarDay;

// Digits: Unicode, blocks Devanagari (U+0966) and Bengali (U+09E6). Default numerals and hours: Unicode CLDR 47, from memory.
it.each([
  ["en", "1.2 l", "14:05"],
  ["en-US", "1.2 l", "2:05 PM"],
  ["es", "1,2 l", "14:05"],
  ["bn-u-nu-latn-hc-h23", "1.2", "14:05"],
  ["bn-u-hc-h23", "১.২", "১৪:০৫"],
  ["hi-u-hc-h23", "1.2", "14:05"],
  ["hi-u-nu-deva-hc-h23", "१.२", "१४:०५"],
])("writes figures and hours in %s as %s and %s", (locale, figure, clock) => {
  const words = wordsFor(locale, "metric");
  const { number, unit, gap } = words.figure("waterMl", 1200)!;
  expect(plain(`${number}${gap}${unit}`)).toContain(figure);
  expect(plain(words.clock(TWO_PM, "UTC"))).toBe(clock);
});

it("writes counts and plain numbers of a sentence in the numerals of the locale", () => {
  expect(wordsFor("bn", "metric").say("begin.step", { step: 2, stepCount: 4 })).toMatch(/২.*৪|৪.*২/);
  expect(wordsFor("hi-u-nu-deva", "metric").say("status.failing", { failureCount: 7, time: "" })).toContain(
    "७",
  );
});

it("begins a heading that is a day with a capital, and a day within a sentence as the language has it", () => {
  const words = wordsFor("es", "metric");
  expect(words.day(DAY)).toBe("Miércoles 12 de mayo");
  expect(words.say("deed.until", { untilDay: DAY })).toContain("miércoles 12 de mayo");
});

// Order of the parts of a date: Unicode CLDR 47, from memory.
it("writes the year of a day only where it is another", () => {
  const [first, last] = ["2027-01-01", "2026-12-31"] as CalendarDay[];
  const short = { width: "short", seenFrom: DAY } as const;
  const written = (locale: string, day: CalendarDay) => plain(wordsFor(locale, "metric").day(day, short));
  expect([written("en", first!), written("en", last!)]).toEqual(["Fri 1 Jan", "Thu 31 Dec 2026"]);
  expect(written("en-US", last!)).toBe("Thu Dec 31, 2026");
  expect(written("es", last!)).toMatch(/^Jue 31 dic 2026$/);
  expect(wordsFor("es", "metric").day(last!, { seenFrom: DAY, amid: true })).toBe(
    "jueves 31 de diciembre de 2026",
  );
});

it("puts a space that does not break before a percent sign where the language does", () => {
  expect(wordsFor("es", "metric").say("reason.still-wet", { leftFrac: 0.31 })).toContain("31\u00a0%");
  expect(wordsFor("hi", "metric").say("reason.still-wet", { leftFrac: 0.31 })).toContain("31%");
});

it("speaks English where it knows no word of a language", () => {
  const words = wordsFor("fi-FI", "metric");
  expect([words.language, words.say("verb.water")]).toEqual(["en", "Water"]);
});

it("names each language by itself", () => {
  expect(LANGUAGES.map(ownNameOf)).toEqual(["English", "Español", "বাংলা", "हिन्दी"]);
});

describe("the words of a house", () => {
  it("change for whoever holds them", () => {
    const words = houseWords({ locale: "en", units: "metric" });
    const { say } = words;
    words.choose({ locale: "bn", units: "metric" });
    expect([words.language, words.locale]).toEqual(["bn", "bn"]);
    expect(say("begin.step", { step: 2, stepCount: 4 })).toContain("২");
  });

  it.each(["bn-IN-u-hc-h23-nu-latn", "es-MX", "en-GB", "hi-u-nu-deva"])(
    "come back from a form as %s",
    (locale) => {
      const choice = { locale, units: "metric" as const };
      expect(choiceOfParts(partsOfChoice(choice), choice)).toEqual(choice);
    },
  );
});
