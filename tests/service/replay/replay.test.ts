import { mkdtemp, readdir, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterEach, beforeAll, beforeEach, describe, expect, it } from "vitest";
import type { CellResult } from "../../../core/replay/play-cell.ts";
import { daysFromCsv } from "../../../service/replay/days-from-csv.ts";
import { keptCellsIn } from "../../../service/replay/kept-cells.ts";
import { type ReplayAsk, readReplayAsk } from "../../../service/replay/replay-ask.ts";
import { REPLAY_PLACES } from "../../../service/replay/replay-places.ts";
import { replayReport } from "../../../service/replay/replay-report.ts";
import { reportMarkdown } from "../../../service/replay/report-markdown.ts";
import { runReplay } from "../../../service/replay/run-replay.ts";

function askOf(typed: Parameters<typeof readReplayAsk>[0]): ReplayAsk {
  const read = readReplayAsk(typed);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

const QUICK = askOf({
  place: "seattle",
  group: "pelargonium",
  policy: "fixed-days,dry-to-the-finger",
  years: "2013",
  seeds: "2",
  bound: false,
});

let dir = "";
beforeEach(async () => {
  dir = await mkdtemp(join(tmpdir(), "leebench-replay-"));
});
afterEach(() => rm(dir, { recursive: true, force: true }));

describe("what is to be replayed", () => {
  it("is the planner and people's ways on both real towns when nothing is said", () => {
    const ask = askOf({ bound: true });
    expect(ask.placeIds).toEqual(["seattle", "new-york"]);
    expect(ask.groupIds).toHaveLength(8);
    expect(ask.policyIds).toContain("planner");
    expect(ask.policyIds).not.toContain("planner-no-learning");
  });

  it("tells every fault at once", () => {
    const read = readReplayAsk({
      place: "seatle",
      policy: "planer",
      seeds: "0",
      vessel: "24x18",
      years: "1999",
      bound: true,
    });
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.problems.map(({ code, path }) => `${path[0]} ${code}`).sort()).toEqual([
      "--place not-one-of",
      "--policy not-one-of",
      "--seeds not-a-whole-number",
      "--vessel not-a-vessel",
      "--years not-one-of",
    ]);
    expect(read.problems.find(({ path }) => path[0] === "--place")!.data).toMatchObject({
      nearest: expect.arrayContaining(["seattle"]),
    });
  });

  it("takes a vessel and a mix for all pots", () => {
    const ask = askOf({ vessel: "24x18x20:unglazed", mix: "barky", bound: false });
    expect(ask.vessel).toMatchObject({ topCm: 24, baseCm: 18, heightCm: 20, material: "unglazed" });
    expect(ask.mixId).toBe("barky");
  });
});

describe("a replay", () => {
  let whole: CellResult[] = [];
  beforeAll(async () => {
    whole = await runReplay(QUICK);
  });

  it("comes out the same twice, and goes on from what was kept", async () => {
    const kept = await keptCellsIn(dir, { policies: QUICK.policyIds });
    await runReplay({ ...QUICK, seedCount: 1 }, { kept });
    const found: boolean[] = [];
    const resumed = await runReplay(QUICK, {
      kept,
      onProgress: (at) => {
        if (Number.isInteger(at.done)) found.push(at.kept);
      },
    });
    expect(found).toEqual([true, false]);
    expect(JSON.stringify(resumed)).toBe(JSON.stringify(whole));
  });

  it("plays again what was cut short, and does not take another run's parts for its own", async () => {
    const kept = await keptCellsIn(dir, { policies: QUICK.policyIds });
    const one = { ...QUICK, seedCount: 1 };
    const [cell] = await runReplay(one, { kept });
    const [file] = await readdir(dir);
    await writeFile(join(dir, file!), '{"placeId":"sea');
    expect(JSON.stringify(await runReplay(one, { kept }))).toBe(JSON.stringify([cell]));
    const other = await keptCellsIn(dir, { policies: ["planner"] });
    expect(await other.read("seattle-1-2013")).toBeNull();
  });

  it("is told as Markdown and in figures", async () => {
    const report = replayReport(QUICK, whole);
    const text = reportMarkdown(report);
    expect(text).toContain("| fixed-days |");
    expect(text).toContain("public domain");
    expect(text).not.toMatch(/NaN|undefined|Infinity/);
    expect(report.policies.map(({ potSeasons }) => potSeasons)).toEqual([2, 2]);
  });
});

describe("places", () => {
  it("are two real towns and two coasts that say they are invented", () => {
    expect(REPLAY_PLACES.filter(({ real }) => real).map(({ id }) => id)).toEqual(["seattle", "new-york"]);
    for (const place of REPLAY_PLACES.filter(({ real }) => !real)) {
      expect(place.id).toMatch(/^invented-/);
      expect(place.credit).toContain("nobody measured");
    }
  });

  it("have summers without rain and a wet season where they say so", () => {
    const rainOf = (id: string, months: readonly number[]) => {
      const { rainMm, firstDay } = REPLAY_PLACES.find((place) => place.id === id)!.days();
      const monthOf = (d: number) =>
        new Date(Date.parse(`${firstDay}T00:00:00Z`) + d * 86_400_000).getUTCMonth() + 1;
      const days = Array.from(rainMm.keys()).filter((d) => months.includes(monthOf(d)));
      return days.reduce((sum, d) => sum + rainMm[d]!, 0) / 4;
    };
    expect(rainOf("invented-monsoon", [6, 7, 8])).toBeGreaterThan(400);
    expect(rainOf("invented-monsoon", [12, 1, 2])).toBeLessThan(200);
    expect(rainOf("invented-dry-summer", [6, 7, 8])).toBeLessThan(60);
  });
});

describe("days from a file", () => {
  it("tells each fault with its line", () => {
    const text = [
      "day,rainMm,tempMaxC,tempMinC,windMPerS",
      "2013-01-01,0,5,1,3",
      "2013-01-03,-1,5,9,3",
      "2013-01-04,,5,1,3",
    ];
    const read = daysFromCsv(text.join("\n"));
    expect(read.ok).toBe(false);
    if (read.ok) return;
    expect(read.problems.map(({ code, path }) => `${path[0]} ${code}`)).toEqual([
      "3 below-zero",
      "3 minimum-above-maximum",
      "3 days-not-in-a-row",
      "4 no-number",
    ]);
    expect(daysFromCsv("day,rain").ok).toBe(false);
    expect(daysFromCsv("day,rainMm,tempMaxC,tempMinC,windMPerS\n").ok).toBe(false);
  });
});
