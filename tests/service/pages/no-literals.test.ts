import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";

const SERVICE = join(import.meta.dirname, "../../../service");
/** Words between two tags; signs of code between types and arrows tell those apart. */
const BETWEEN_TAGS = /(?<![=\-\s])>\s*([^<>{}()=;|&]*\p{L}{2,}[^<>{}()=;|&]*)<\//gu;
/** Attributes that are read out. */
const SPOKEN = /\b(?:aria-label|title|alt|placeholder|label|hint)="([^"]*\p{L}{2,}[^"]*)"/gu;

function literalsIn(text: string): string[] {
  return [BETWEEN_TAGS, SPOKEN].flatMap((pattern) =>
    [...text.matchAll(pattern)].map(([, words]) => words?.trim() ?? ""),
  );
}

it("has every sentence of pages and mails from the catalogue", () => {
  const files = readdirSync(SERVICE, { recursive: true, encoding: "utf8" }).filter((file) =>
    file.endsWith(".tsx"),
  );
  expect(files.length).toBeGreaterThan(50);
  const found = files.flatMap((file) =>
    literalsIn(readFileSync(join(SERVICE, file), "utf8")).map((words) => `${file}: ${words}`),
  );
  expect(found).toEqual([]);
});

it("would find a sentence that stands between tags or is read out", () => {
  expect(literalsIn("<p>\n  Water the pots\n</p>")).toEqual(["Water the pots"]);
  expect(literalsIn('<button aria-label="Take back">')).toEqual(["Take back"]);
  expect(literalsIn('<p class="hint">{say("hint.time")}</p>')).toEqual([]);
});
