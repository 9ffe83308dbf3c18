import { BN } from "./bn.ts";
import { EN, type MessageKey } from "./en.ts";
import { ES } from "./es.ts";
import { HI } from "./hi.ts";

/** The sentences of one language. One that is not there yet is said in English. */
export type Catalogue = Readonly<Partial<Record<MessageKey, string>>>;

/** Every language that Leebench speaks, by its code. A further one is a file with the keys of en.ts and a line here. */
export const CATALOGUES = { en: EN, es: ES, bn: BN, hi: HI } as const satisfies Record<string, Catalogue>;

export type Language = keyof typeof CATALOGUES;

export const LANGUAGES = Object.keys(CATALOGUES) as Language[];

/** The language of a locale such as "es-MX"; English where it is none that is spoken here. */
export function languageOf(locale: string): Language {
  const { language } = new Intl.Locale(locale);
  return LANGUAGES.find((one) => one === language) ?? "en";
}

/** What a language calls itself: "English", "Español". */
export function ownNameOf(language: Language): string {
  const name = new Intl.DisplayNames(language, { type: "language" }).of(language) ?? language;
  return name.charAt(0).toLocaleUpperCase(language) + name.slice(1);
}
