import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { briefOf } from "../../service/brief/brief.ts";
import { briefHtml } from "../../service/brief/brief-html.tsx";
import { LANGUAGES } from "../../service/words/languages.ts";
import { wordsFor } from "../../service/words/words.ts";
import { MORNINGS } from "../service/words/book/mornings.ts";
import { openBrowser } from "./open-browser.ts";

const PHONE = { width: 390, height: 844 };
const LINKS = { address: (purpose: string) => `https://house.example/answer/${purpose}` };

interface Seen {
  readonly widthPx: number;
  readonly lang: string;
  readonly tapsPx: readonly number[];
  readonly text: string;
}

const SEE = `({
  widthPx: document.documentElement.scrollWidth,
  lang: document.documentElement.lang,
  tapsPx: [...document.querySelectorAll("a")].map((link) => link.getBoundingClientRect().height),
  text: document.body.textContent,
})`;

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each(LANGUAGES)("mail of the forty mornings in %s, on a phone", (language) => {
  it("stays within the width, asks nobody for anything, and can be tapped", async () => {
    const words = wordsFor(language, "metric");
    const page = await browser.newPage({ viewport: PHONE });
    const asked: string[] = [];
    page.on("request", ({ url }) => asked.push(url()));
    const faults: string[] = [];
    for (const morning of MORNINGS) {
      const brief = briefOf({ ...morning, words });
      await page.setContent(briefHtml(brief, { links: LINKS, words }));
      const seen = await page.evaluate<Seen>(SEE);
      if (seen.widthPx > PHONE.width) faults.push(`${morning.name}: ${seen.widthPx} px wide`);
      if (seen.lang !== language) faults.push(`${morning.name}: language ${seen.lang}`);
      if (seen.tapsPx.some((height) => height < 24)) faults.push(`${morning.name}: a link too low to tap`);
      if (!seen.text.includes(brief.lead)) faults.push(`${morning.name}: without its lead`);
      if (/\uFFFD|\{[a-z]+[},]/i.test(seen.text)) faults.push(`${morning.name}: a broken letter or name`);
    }
    await page.close();
    expect(faults).toEqual([]);
    expect(asked).toEqual([]);
  });
});
