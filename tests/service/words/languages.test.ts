import { describe, expect, it } from "vitest";
import { EN, type MessageKey } from "../../../service/words/en.ts";
import { CATALOGUES, LANGUAGES, type Language } from "../../../service/words/languages.ts";
import { readMessage } from "./message-reading.ts";

const OTHERS = LANGUAGES.filter((language) => language !== "en");
const messagesOf = (language: Language) => Object.entries(CATALOGUES[language]) as [MessageKey, string][];

/** Each half of the day is told by its own argument, and no language tells both. */
const EITHER_ARGUMENT = new Set<string>(["clock.half-day"]);

describe.each(OTHERS)("the catalogue of %s", (language) => {
  const messages = messagesOf(language);
  const faults = (test: (text: string, key: MessageKey) => boolean) =>
    messages.filter(([key, text]) => !test(text, key)).map(([key, text]) => `${key}: ${text}`);

  it(`says everything that English says (add what is listed to ${language}.ts)`, () => {
    const missing = Object.entries(EN).filter(([key]) => !(key in CATALOGUES[language]));
    expect(missing.map(([key, text]) => `"${key}": ${JSON.stringify(text)},`)).toEqual([]);
  });

  it(`says nothing that English does not (take what is listed out of ${language}.ts)`, () => {
    expect(messages.map(([key]) => key).filter((key) => !(key in EN))).toEqual([]);
  });

  it("names the figures that English names", () => {
    const differing = faults(
      (text, key) =>
        EITHER_ARGUMENT.has(key) ||
        String(readMessage(text, language).names) === String(readMessage(EN[key], "en").names),
    );
    expect(differing).toEqual([]);
  });

  it("has every plural form that whole numbers to ten thousand and halves ask for", () => {
    const rules = new Intl.PluralRules(language);
    const counts = [...Array(10_001).keys(), 0.5, 1.5, 2.5];
    const asked = [...new Set(counts.map((count) => rules.select(count)))];
    const lacking = faults((text) =>
      readMessage(text, language).plurals.every(({ branches }) =>
        asked.every((category) => branches.has(category) || (branches.size === 2 && branches.has("=1"))),
      ),
    );
    expect(lacking).toEqual([]);
  });

  // Unicode CLDR plural rules: in Bengali and Hindi nought belongs to the form "one" (i = 0 or n = 1).
  it("never says one where nought is meant", () => {
    const noughtIsOne = new Intl.PluralRules(language).select(0) === "one";
    const misleading = faults((text) =>
      readMessage(text, language).plurals.every(({ branches }) => {
        const one = branches.get("one");
        return !noughtIsOne || !one || one.tellsNumber || branches.has("=0") || branches.has("=1");
      }),
    );
    expect(misleading).toEqual([]);
  });

  it("keeps a calm voice: no exclamation marks, no scolding", () => {
    expect(faults((text) => !/[!¡]/.test(text))).toEqual([]);
  });
});
