import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { FEED_CODES, nextStepOf } from "../../../service/feed/feed-problem.ts";
import { JOB_FAULTS } from "../../../service/jobs/fault-note.ts";
import { MESSAGE_FAULTS } from "../../../service/notify/message-fault.ts";
import { STORE_FAULT_CODES } from "../../../service/store/store-fault.ts";
import { EN } from "../../../service/words/en.ts";

const KEYS = new Set(Object.keys(EN));
const SERVICE = join(import.meta.dirname, "../../../service");

/** Codes written out where a problem or a fault is made, whatever table they stand in. */
const made = ["feed", "jobs", "notify", "store"].flatMap((folder) =>
  readdirSync(join(SERVICE, folder), { recursive: true, encoding: "utf8" })
    .filter((file) => file.endsWith(".ts"))
    .flatMap((file) => [
      ...readFileSync(join(SERVICE, folder, file), "utf8").matchAll(
        /(?:\bcode: |\bfault: |feedProblem\(\s*|StoreFault\(\s*|unusable\(\s*)"([a-z]+(?:-[a-z]+)+)"/g,
      ),
    ])
    .map(([, code]) => code!),
);

/** Answers to an import or to `forget` on the terminal, to a script, to an answered link, and beside the form of a photo. */
const TOLD_ELSEWHERE = new Set([
  "site-is-here",
  "not-a-plan",
  "no-such-person",
  "owner-stays",
  "link-broken",
  "link-expired",
  "not-a-photo",
  "no-such-locale",
]);
/** Stands in for a failed call without any problem, which no call makes; only its wait is used. */
const NEVER_KEPT = new Set(["feed-unknown"]);

describe("every way in which feed, jobs, messages and store can be at fault has words", () => {
  it.each([...FEED_CODES, ...JOB_FAULTS, ...MESSAGE_FAULTS, ...STORE_FAULT_CODES])("%s", (code) => {
    expect(KEYS).toContain(`fault.${code}`);
  });

  it.each([...new Set(FEED_CODES.map(nextStepOf))])("what helps: %s", (next) => {
    expect(KEYS).toContain(`next-step.${next}`);
  });

  it("and so has every code that their sources write out", () => {
    expect(made.length).toBeGreaterThan(40);
    const wordless = made.filter(
      (code) => !KEYS.has(`fault.${code}`) && !TOLD_ELSEWHERE.has(code) && !NEVER_KEPT.has(code),
    );
    expect([...new Set(wordless)]).toEqual([]);
  });

  it("and no sentence is kept for a code that is gone", () => {
    const known = new Set<string>([
      ...FEED_CODES,
      ...JOB_FAULTS,
      ...MESSAGE_FAULTS,
      ...STORE_FAULT_CODES,
      "other",
    ]);
    const stale = [...KEYS].filter(
      (key) => key.startsWith("fault.") && !known.has(key.slice("fault.".length)),
    );
    expect(stale).toEqual([]);
  });
});
