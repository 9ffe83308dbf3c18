import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { briefOf } from "../../../../service/brief/brief.ts";
import { briefText } from "../../../../service/brief/brief-text.ts";
import type { Brief } from "../../../../service/brief/brief-value.ts";
import { LANGUAGES } from "../../../../service/words/languages.ts";
import { wordsFor } from "../../../../service/words/words.ts";
import { MORNINGS } from "./mornings.ts";

const ONE_LINE_A_SENTENCE = 10_000;
/** Longest headline that a notification of two lines shows on a phone, in what a reader takes for letters. Chosen by us. */
const HEADLINE_LETTERS = 90;
/** The one line of an empty morning, on a phone three rows. Chosen by us. */
const EMPTY_LINE_LETTERS = 120;

const letters = (text: string) => [...new Intl.Segmenter().segment(text)].length;

/** Read aloud in each language before it was accepted; a changed sentence is read again. */
describe.each(LANGUAGES)("the book of mornings in %s", (language) => {
  const words = wordsFor(language, "metric");
  const briefs = MORNINGS.map((morning) => ({ name: morning.name, brief: briefOf({ ...morning, words }) }));

  const text = (brief: Brief) =>
    brief.emptyLine ?? briefText(brief, { widthChars: ONE_LINE_A_SENTENCE }).trim();
  // What every ordinary morning ends with is read once, in the first that has deeds.
  const ordinary = text(briefs.find(({ brief }) => brief.stops.length > 0)!.brief);
  const ending = ordinary.slice(ordinary.indexOf(`\n\n${briefs[0]!.brief.windows.heading}`));
  let wasRead = false;
  const shortened = (whole: string) => {
    if (!whole.endsWith(ending)) return whole;
    const said = wasRead ? `${whole.slice(0, -ending.length)}\n\n(as above)` : whole;
    wasRead = true;
    return said;
  };

  it("reads as it was accepted", async () => {
    expect(briefs).toHaveLength(44);
    const book = briefs
      .map(({ name, brief }) => `# ${name}: ${brief.headline}\n\n${shortened(text(brief))}`)
      .join("\n\n");
    await expect(`${book}\n`).toMatchFileSnapshot(join(import.meta.dirname, `${language}.txt`));
  });

  it("has headlines and empty mornings that fit a phone", () => {
    const tooLong = briefs.flatMap(({ brief }) => [
      ...(brief.stops.length > 0 && letters(brief.headline) > HEADLINE_LETTERS ? [brief.headline] : []),
      ...(letters(brief.emptyLine ?? "") > EMPTY_LINE_LETTERS ? [brief.emptyLine] : []),
    ]);
    expect(tooLong).toEqual([]);
  });
});
