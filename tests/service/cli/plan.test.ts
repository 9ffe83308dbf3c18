import { Ajv2020 } from "ajv/dist/2020.js";
import { describe, expect, it } from "vitest";
import { writtenCase } from "../case/case-builder.ts";
import { commandHere } from "./command-here.ts";
import { problemsIn, runCommand } from "./run-command.ts";

/** What the command prints as a schema, in the hands of an independent validator. */
async function printedValidator(what: "case" | "plan") {
  const { stdout } = await commandHere(["schema", what]);
  const ajv = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true, validateFormats: false });
  return ajv.compile(JSON.parse(stdout));
}

describe("leebench plan", () => {
  it("gives the same bytes for the same case, as its schema says, and takes the plan back as the previous one", async () => {
    const printed = await commandHere(["demo", "--print-case"]);
    expect([printed.code, printed.stderr]).toEqual([0, ""]);
    const [first, second] = await Promise.all([
      runCommand(["plan"], { input: printed.stdout }),
      commandHere(["plan"], { input: printed.stdout }),
    ]);
    expect([first.code, first.stderr]).toEqual([0, ""]);
    expect(second.stdout).toBe(first.stdout);

    const [validCase, validPlan] = [await printedValidator("case"), await printedValidator("plan")];
    const written = JSON.parse(printed.stdout);
    expect(validCase(written) || validCase.errors).toBe(true);
    expect(validPlan(JSON.parse(first.stdout)) || validPlan.errors).toBe(true);

    const again = await commandHere(["plan"], {
      input: JSON.stringify({ ...written, previous: JSON.parse(first.stdout) }),
    });
    expect([again.code, again.stderr]).toEqual([0, ""]);
    expect(JSON.parse(again.stdout).changesSince).toEqual([]);
  });

  it("lists all three faults of a case with three and ends with 1", async () => {
    const written = structuredClone(writtenCase());
    written.collection.pots[0]!.groupId = "citris";
    written.collection.site.latDeg = 95;
    written.weather.hours.rainMm.pop();
    const { code, stdout, stderr } = await commandHere(["plan"], { input: JSON.stringify(written) });
    expect([code, stdout]).toEqual([1, ""]);
    expect(problemsIn(stderr)).toEqual([
      { code: "too-large", path: ["collection", "site", "latDeg"], data: { given: 95, most: 90 } },
      {
        code: "unknown-group",
        path: ["collection", "pots", 0, "groupId"],
        data: { given: "citris", nearest: expect.arrayContaining(["citrus"]) },
      },
      { code: "wrong-length", path: ["weather", "hours", "rainMm"], data: { given: 71, expected: 72 } },
    ]);
  });

  it("plans all the same, and tells, when a pot has no planting or an entry does not count", async () => {
    const written = structuredClone(writtenCase());
    const [pot] = written.collection.pots;
    written.collection.pots.push({ ...pot!, id: "bare", name: "Bare" });
    written.journal.push({ id: "e2", at: "2031-03-04T08:00Z", body: { kind: "undo", ofEntryId: "e9" } });
    const { code, stdout, stderr } = await commandHere(["plan"], { input: JSON.stringify(written) });
    expect(code).toBe(0);
    expect(JSON.parse(stdout).pots.map(({ potId }: { potId: string }) => potId)).toEqual(["bay"]);
    expect(
      problemsIn(stderr)
        .map((problem) => problem.code)
        .sort(),
    ).toEqual(["entry-unknown", "pot-not-planted"]);
  });

  it.each(["", "{", "null", "[]", '"case"'])("refuses %j with a problem, not a crash", async (input) => {
    const { code, stdout, stderr } = await commandHere(["plan"], { input });
    expect([code, stdout]).toEqual([1, ""]);
    expect(problemsIn(stderr)).toHaveLength(1);
  });
});
