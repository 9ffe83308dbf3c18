import type { WordChoice } from "./house-words.ts";
import { type Language, languageOf } from "./languages.ts";
import type { Units } from "./units.ts";

/** A choice of words as its parts stand in a form. */
export interface ChoiceParts {
  readonly language: Language;
  /** "usual" leaves it to the language. */
  readonly numerals: "usual" | Numerals;
  readonly clock: "usual" | "h12" | "h23";
  readonly units: Units;
}

export type Numerals = "latn" | "beng" | "deva";

/** Numerals that a language is written with, besides the usual ones of the world. */
export const OWN_NUMERALS: Readonly<Partial<Record<Language, Numerals>>> = { bn: "beng", hi: "deva" };

export function partsOfChoice({ locale, units }: WordChoice): ChoiceParts {
  const { numberingSystem, hourCycle } = new Intl.Locale(locale);
  const numerals = ["latn", "beng", "deva"].find((one) => one === numberingSystem) as Numerals | undefined;
  return {
    language: languageOf(locale),
    numerals: numerals ?? "usual",
    clock: hourCycle === "h12" || hourCycle === "h23" ? hourCycle : "usual",
    units,
  };
}

/** The parts as a choice; the region of the choice before is kept where the language stays. */
export function choiceOfParts(parts: ChoiceParts, before: WordChoice): WordChoice {
  const { language, numerals, clock, units } = parts;
  const was = new Intl.Locale(before.locale);
  const locale = new Intl.Locale(language, {
    ...(was.language === language && was.region !== undefined ? { region: was.region } : {}),
    ...(numerals === "usual" ? {} : { numberingSystem: numerals }),
    ...(clock === "usual" ? {} : { hourCycle: clock }),
  });
  return { locale: locale.toString(), units };
}
