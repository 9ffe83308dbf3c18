import { existsSync } from "node:fs";
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { startDemoFeed } from "../../../demo/demo-feed.ts";
import { fillStore } from "../../../demo/fill-store.ts";
import { openStore } from "../../../service/store/open-store.ts";
import { collection, plan } from "../brief/plan-builder.ts";
import { commandHere } from "./command-here.ts";
import { problemsIn, runCommand } from "./run-command.ts";

let dataDir = "";

beforeEach(async () => {
  dataDir = await mkdtemp(join(tmpdir(), "leebench-brief-"));
});

afterEach(() => rm(dataDir, { recursive: true, force: true }));

const brief = (...args: string[]) => commandHere(["brief", ...args], { env: { LEEBENCH_DATA_DIR: dataDir } });

/** A store as the service leaves it: a site with its plan. */
async function keep({ withPlan }: { withPlan: boolean }): Promise<void> {
  const store = await openStore(join(dataDir, "leebench.db"));
  const { site, spots, mixes, pots } = collection;
  await store.sites.put(site);
  for (const spot of spots) await store.spots.put(site.id, spot);
  for (const mix of mixes) await store.mixes.put(site.id, mix);
  for (const pot of pots) await store.pots.put(site.id, pot);
  if (withPlan) await store.plans.save(plan(), { kind: "morning", madeUtcMs: Date.UTC(2027, 4, 12, 4, 30) });
  await store.close();
}

describe("leebench brief", () => {
  it("prints the kept plan as text, and with --json the plan itself", async () => {
    await keep({ withPlan: true });
    const text = await brief();
    expect([text.code, text.stderr]).toEqual([0, ""]);
    expect(text.stdout).toContain("850");
    const json = await brief("--json", "--site", collection.site.id);
    expect(JSON.parse(json.stdout)).toEqual(plan());
  });

  it("says what to do where nothing is kept, without making a store", async () => {
    const { code, stdout, stderr } = await brief();
    expect([code, stdout]).toEqual([2, ""]);
    expect(problemsIn(stderr).map((problem) => problem.code)).toEqual(["nothing-kept"]);
    expect(existsSync(join(dataDir, "leebench.db"))).toBe(false);
  });

  it("says so where a site has no plan yet", async () => {
    await keep({ withPlan: false });
    const { code, stderr } = await brief();
    expect([code, problemsIn(stderr).map((problem) => problem.code)]).toEqual([2, ["no-plan-yet"]]);
  });

  it("with --now and a feed that is down fails with 2 and the feed's own problems", async () => {
    await keep({ withPlan: false });
    const nowhere = "http://127.0.0.1:9";
    const env = {
      LEEBENCH_DATA_DIR: dataDir,
      LEEBENCH_FEED_URL: nowhere,
      LEEBENCH_ENSEMBLE_URL: nowhere,
      LEEBENCH_FALLBACK_URL: nowhere,
    };
    const { code, stdout, stderr } = await commandHere(["brief", "--now"], { env });
    expect([code, stdout]).toEqual([2, ""]);
    const codes = problemsIn(stderr).map((problem) => problem.code);
    expect(codes[0]).toBe("no-weather-yet");
    expect(codes.length).toBeGreaterThan(1);
  });

  it("with --now pulls the weather, plans, keeps the plan and prints it", async () => {
    await fillStore(dataDir, Date.now());
    const { server } = await startDemoFeed(Date.now());
    const env = {
      LEEBENCH_DATA_DIR: dataDir,
      LEEBENCH_FEED_URL: server.url,
      LEEBENCH_ENSEMBLE_URL: server.url,
    };
    const made = await runCommand(["brief", "--now", "--json"], { env }).finally(() => server.close());
    expect([made.code, made.stderr]).toEqual([0, ""]);
    const kept = await brief("--json");
    expect(kept.stdout).toBe(made.stdout);
    expect(JSON.parse(kept.stdout).weatherAge.memberCount).toBe(31);
  });

  it("offers the nearest site for a slip", async () => {
    await keep({ withPlan: true });
    const { code, stderr } = await brief("--site", "quy");
    expect(code).toBe(1);
    expect(problemsIn(stderr)).toEqual([
      { code: "no-such-site", path: ["--site"], data: { given: "quy", nearest: ["quay"] } },
    ]);
  });

  it("tells every fault in the settings at once", async () => {
    const env = { LEEBENCH_DATA_DIR: dataDir, LEEBENCH_PORT: "x", LEEBENCH_UNITS: "cubits" };
    const { code, stderr } = await commandHere(["brief"], { env });
    expect(code).toBe(1);
    expect(problemsIn(stderr).map(({ path }) => path[0])).toEqual(["LEEBENCH_PORT", "LEEBENCH_UNITS"]);
  });

  it("fails with 2 and a sentence when the store is no store", async () => {
    await writeFile(join(dataDir, "leebench.db"), "this is a letter, not a store, and long enough to be one");
    const { code, stderr } = await brief();
    expect([code, problemsIn(stderr).map((problem) => problem.code)]).toEqual([2, ["store-not-ours"]]);
  });
});
