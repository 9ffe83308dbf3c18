import { describe, expect, it } from "vitest";
import { VERBS } from "../../../service/cli/verbs.ts";
import { commandHere } from "./command-here.ts";
import { problemsIn, runCommand, runScript } from "./run-command.ts";

describe("leebench", () => {
  it("without a verb lists them all", async () => {
    const { code, stdout, stderr } = await runCommand([]);
    expect([code, stderr]).toEqual([0, ""]);
    for (const { name } of VERBS) expect(stdout).toMatch(new RegExp(`^  ${name} `, "m"));
    expect(VERBS.every(({ summary }) => stdout.includes(summary))).toBe(true);
  });

  it.each(VERBS.map(({ name }) => name))(
    "%s --help says how it is used and what the exit codes mean",
    async (name) => {
      const { code, stdout, stderr } = await commandHere([name, "--help"]);
      expect([code, stderr]).toEqual([0, ""]);
      expect(stdout).toMatch(new RegExp(`^leebench ${name}\\b`));
      expect(stdout).toContain("Exit codes: 0 done; 1 bad input");
      expect(Math.max(...stdout.split("\n").map((line) => line.length))).toBeLessThanOrEqual(100);
    },
  );

  it("finds the modules of every verb as Node itself reads them", async () => {
    const loaded = await runScript(
      'const { VERBS } = await import("./service/cli/verbs.ts");' +
        "for (const { load } of VERBS) console.log((await load()).about.length > 0);",
    );
    expect([loaded.code, loaded.stderr]).toEqual([0, ""]);
    expect(loaded.stdout).toBe("true\n".repeat(VERBS.length));
  });

  it("offers the nearest verb for a slip", async () => {
    const { code, stdout, stderr } = await runCommand(["breif"]);
    expect([code, stdout]).toEqual([1, ""]);
    expect(problemsIn(stderr)).toEqual([
      { code: "unknown-verb", path: ["<verb>"], data: expect.objectContaining({ given: "breif" }) },
    ]);
    expect(stderr).toContain('"nearest":["brief"');
  });

  it.each<[string, string[], string[]]>([
    ["an unknown option", ["brief", "--jsn"], ["unknown-option --jsn"]],
    ["an option without its value", ["brief", "--site"], ["option-needs-a-value --site"]],
    ["a value where none belongs", ["brief", "--json=yes"], ["option-takes-no-value --json"]],
    ["a word too many", ["plan", "now"], ["unexpected-word now"]],
    ["a word left out", ["schema"], ["missing <what>"]],
    ["a word that is not known", ["calc", "et0"], ["not-one-of <what>"]],
    [
      "several at once",
      ["schema", "cases", "more", "--x"],
      ["not-one-of <what>", "unexpected-word more", "unknown-option --x"],
    ],
  ])("refuses %s and says what", async (_what, args, expected) => {
    const { code, stderr } = await commandHere(args);
    expect(code).toBe(1);
    expect(
      problemsIn(stderr)
        .map((problem) => `${problem.code} ${problem.path.join(".")}`)
        .sort(),
    ).toEqual(expected);
  });
});
