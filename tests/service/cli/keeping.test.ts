import { existsSync, statSync } from "node:fs";
import { copyFile, mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { basename, join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { fillStore } from "../../../demo/fill-store.ts";
import { demoCollection } from "../../../demo/harbour.ts";
import { commandHere } from "./command-here.ts";
import { problemsIn, runCommand } from "./run-command.ts";

const NOW = Date.UTC(2031, 4, 4, 9);
const { site, pots } = demoCollection;

let dir = "";

beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), "leebench-keeping-"));
});

afterEach(() => rm(dir, { recursive: true, force: true }));

const keptIn = (name: string, input = "") => ({ input, env: { LEEBENCH_DATA_DIR: join(dir, name) } });
const at = (name: string, args: readonly string[], input = "") => commandHere(args, keptIn(name, input));

async function filled(name: string): Promise<void> {
  const made = await at(
    name,
    ["import"],
    JSON.stringify({ format: "leebench-export", version: 1, exportedAt: "2031-05-04T09:00Z", sites: [] }),
  );
  expect(made.code).toBe(0);
  await fillStore(join(dir, name), NOW);
}

describe("what is kept", () => {
  it("goes out as one JSON file and comes in elsewhere the same, once", async () => {
    await filled("here");
    const out = await runCommand(["export"], keptIn("here"));
    expect([out.code, out.stderr]).toEqual([0, ""]);
    const taken = await runCommand(["import"], keptIn("there", out.stdout));
    expect([taken.code, taken.stdout]).toEqual([0, expect.stringContaining(`pots ${pots.length}`)]);
    const again = JSON.parse((await at("there", ["export"])).stdout);
    expect(again.sites).toEqual(JSON.parse(out.stdout).sites);

    const twice = await at("there", ["import"], out.stdout);
    expect([twice.code, problemsIn(twice.stderr).map(({ code }) => code)]).toEqual([1, ["site-is-here"]]);
  });

  it("is copied, lost and put back", async () => {
    await filled("here");
    const copies = join(dir, "copies");
    const made = await runCommand(["backup", "--to", copies], keptIn("here"));
    expect([made.code, made.stderr]).toEqual([0, ""]);
    const file = made.stdout.split("\n")[0]!;
    expect(existsSync(file)).toBe(true);
    expect(statSync(file).mode & 0o077, "readable by others").toBe(0);
    const before = JSON.parse((await at("here", ["export"])).stdout);
    await rm(join(dir, "here"), { recursive: true });
    const back = await runCommand(["restore", file], keptIn("here"));
    expect([back.code, back.stdout]).toEqual([0, expect.stringContaining(`pots ${pots.length}`)]);
    expect(JSON.parse((await at("here", ["export"])).stdout).sites).toEqual(before.sites);
    // A nightly copy by the name under which the page of copies lists it.
    const [nightly, name] = [join(dir, "here", "backup"), basename(file)];
    await mkdir(nightly, { recursive: true });
    await copyFile(file, join(nightly, name));
    expect((await runCommand(["restore", name], keptIn("here"))).code).toBe(0);
    const none = await at("here", ["restore", join(copies, "none.db")]);
    expect([none.code, problemsIn(none.stderr).map(({ code }) => code)]).toEqual([1, ["no-such-file"]]);
    await writeFile(join(copies, "letter.db"), "a letter, not a store");
    const letter = await at("here", ["restore", join(copies, "letter.db")]);
    expect([letter.code, problemsIn(letter.stderr).map(({ code }) => code)]).toEqual([2, ["store-not-ours"]]);
    expect(JSON.parse((await at("here", ["export"])).stdout).sites).toEqual(before.sites);
  });

  it("gives its pots to a spreadsheet and takes them back, slips told by row", async () => {
    await filled("here");
    const csv = (await at("here", ["export", "--pots", "--site", site.id])).stdout;
    expect(csv.trimEnd().split(/\r?\n/)).toHaveLength(pots.length + 1);
    const taller = csv.replace(/(Rail lemon.*),105,/, "$1,120,");
    expect(taller).not.toBe(csv);
    expect((await at("here", ["import", "--pots"], taller)).code).toBe(0);
    expect((await at("here", ["export", "--pots"])).stdout).toBe(taller);

    const slips = csv.replace("citrus", "citris").replace("chart-wall", "cart-wall");
    const refused = await at("here", ["import", "--pots"], slips);
    expect(refused.code).toBe(1);
    expect(
      problemsIn(refused.stderr)
        .map(({ code }) => code)
        .sort(),
    ).toEqual(["unknown-group", "unknown-spot"]);
    expect((await at("here", ["export", "--pots"])).stdout).toBe(taller);
  });

  it("is not made up: nothing kept is told with 2", async () => {
    for (const args of [["export"], ["backup"], ["export", "--pots"], ["import", "--pots"]]) {
      const { code, stderr } = await at("nowhere", args);
      expect([args, code, problemsIn(stderr).map((one) => one.code)]).toEqual([args, 2, ["nothing-kept"]]);
    }
    expect(existsSync(join(dir, "nowhere"))).toBe(false);
  });
});
