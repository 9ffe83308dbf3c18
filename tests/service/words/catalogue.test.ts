import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { IntlMessageFormat } from "intl-messageformat";
import { describe, expect, it } from "vitest";
import {
  ACTIONS,
  CAUTIONS,
  CONFIDENCE_WORDS,
  REASONS,
  STAND_IN_FOR,
} from "../../../service/case/plan-codes.ts";
import { EN } from "../../../service/words/en.ts";

const KEYS = Object.keys(EN);
const SERVICE = join(import.meta.dirname, "../../../service");

const sources = readdirSync(SERVICE, { recursive: true, encoding: "utf8" })
  .filter((file) => /\.tsx?$/.test(file) && !/^words\/(en|es|bn|hi)\.ts$/.test(file))
  .map((file) => readFileSync(join(SERVICE, file), "utf8"))
  .join("\n");

/** Keys written out, and families whose end is a code: `reason.${code}`. */
const written = new Set([...sources.matchAll(/"([a-z][\w-]*(?:\.[\w-]+)+)"/g)].map(([, key]) => key));
const families = [...sources.matchAll(/`([a-z][\w-]*(?:\.[\w-]+)*\.)\$\{/g)].map(([, start]) => start ?? "");

describe("the catalogue", () => {
  it("has no message that nothing uses", () => {
    const unused = KEYS.filter(
      (key) => !written.has(key) && !families.some((start) => key.startsWith(start)),
    );
    expect(unused).toEqual([]);
  });

  it.each(KEYS)("parses %s", (key) => {
    expect(
      () => new IntlMessageFormat(EN[key as keyof typeof EN], "en", undefined, { ignoreTag: true }),
    ).not.toThrow();
  });

  it.each(KEYS)("keeps a calm voice in %s", (key) => {
    expect(EN[key as keyof typeof EN]).not.toMatch(
      /!|\b(you must|you should|should have|forgot|wrong|failed to)\b/i,
    );
  });

  it.each([
    ...ACTIONS.flatMap((code) => [`verb.${code}`, `state.${code}`]),
    ...REASONS.flatMap((code) => [`reason.${code}`, `reason.${code}.bare`]),
    ...CAUTIONS.map((code) => `caution.${code}`),
    ...CONFIDENCE_WORDS.map((code) => `confidence.${code}`),
    ...STAND_IN_FOR.map((code) => `quantity.${code}`),
  ])("has words for %s", (key) => {
    expect(KEYS).toContain(key);
  });
});
