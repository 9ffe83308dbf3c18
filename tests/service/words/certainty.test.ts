import { readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { CONFIDENCE_WORDS } from "../../../service/case/plan-codes.ts";
import { LANGUAGES } from "../../../service/words/languages.ts";
import { wordsFor } from "../../../service/words/words.ts";

const ROOT = join(import.meta.dirname, "../../..");
const table = readFileSync(join(ROOT, "DEVELOPERS.md"), "utf8")
  .split("## Words of certainty")[1]!
  .split("\n## ")[0]!
  .split("\n")
  .filter((line) => line.startsWith("| ") && /\d/.test(line))
  .map((line) => line.split("|").map((cell) => cell.trim()));

it("has the words of certainty that the documents give in percent, in every language", () => {
  const said = CONFIDENCE_WORDS.map((word) =>
    LANGUAGES.map((language) => wordsFor(language, "metric").say(`confidence.${word}`)),
  );
  expect(table.map(([, , ...words]) => words.slice(0, LANGUAGES.length))).toEqual(said);
  expect(new Set(said.flat()).size).toBe(said.flat().length);
});

it("tells the same shares in the README", () => {
  const readme = readFileSync(join(ROOT, "README.md"), "utf8");
  expect(readme).toContain(
    "about even is 40 to 60 %, likely 60 to 80 %, very likely 80 to 95 %, near certain above 95 %",
  );
});
