import { describe, expect, it } from "vitest";
import { commandHere } from "./command-here.ts";
import { problemsIn, runCommand } from "./run-command.ts";

const QUICK = [
  "replay",
  "--place",
  "new-york",
  "--years",
  "2013",
  "--group",
  "pelargonium",
  "--policy",
  "dry-to-the-finger",
];

describe("leebench replay", () => {
  it("prints tables and shows its progress apart", async () => {
    const { code, stdout, stderr } = await runCommand(QUICK);
    expect(code).toBe(0);
    expect(stdout).toContain("| dry-to-the-finger |");
    expect(stderr).toContain("1 of 1");
  });

  it("prints the same bytes for the same seed as JSON", async () => {
    const args = [...QUICK, "--json", "--without-bound"];
    const [one, two, other] = await Promise.all([
      runCommand(args),
      commandHere(args),
      commandHere([...args, "--seed", "2"]),
    ]);
    expect(one.stdout).toBe(two.stdout);
    expect(JSON.parse(one.stdout).format).toBe("leebench-replay");
    expect(other.stdout).not.toBe(one.stdout);
  });

  it("replays the pots of a case, moved to the place", async () => {
    const demo = await commandHere(["demo", "--print-case"]);
    const own = JSON.parse(demo.stdout);
    const few = ["lemon", "agave"];
    own.collection.pots = own.collection.pots.filter(({ id }: { id: string }) => few.includes(id));
    own.journal = own.journal.filter(
      ({ potId }: { potId?: string }) => potId === undefined || few.includes(potId),
    );
    const args = ["replay", "--own", "--place", "seattle", "--policy", "trade-rules", "--without-bound"];
    const { code, stdout } = await commandHere(args, { input: JSON.stringify(own) });
    expect(code).toBe(0);
    expect(stdout).toContain("groups citrus, agave");
    own.journal = [];
    const bare = await commandHere(args, { input: JSON.stringify(own) });
    expect(problemsIn(bare.stderr).map(({ code }) => code)).toEqual(["pot-not-planted", "pot-not-planted"]);
  });

  it("tells what was mistyped", async () => {
    const { code, stderr } = await commandHere(["replay", "--place", "oslo", "--seeds", "many"]);
    expect(code).toBe(1);
    expect(problemsIn(stderr).map(({ code }) => code)).toEqual(["not-one-of", "not-a-whole-number"]);
  });
});
