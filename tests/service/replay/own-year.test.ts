import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { gardenAt } from "../../../core/replay/stage/garden.ts";
import type { Site } from "../../../core/site/site.ts";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { keptCellsIn } from "../../../service/replay/kept-cells.ts";
import { OWN_SITE, yearFromArchive } from "../../../service/replay/own-year.ts";
import { readReplayAsk } from "../../../service/replay/replay-ask.ts";
import { replayReport } from "../../../service/replay/replay-report.ts";
import { reportMarkdown } from "../../../service/replay/report-markdown.ts";
import { type Ground, runReplay } from "../../../service/replay/run-replay.ts";
import { servePastYear } from "../feed/past-year-server.ts";

const SITE: Site = {
  id: "s",
  name: "Lee",
  latDeg: 48.1,
  lonDeg: 11.5,
  elevationM: 520,
  zone: "Europe/Berlin",
};
let dir = "";
beforeAll(async () => {
  dir = await mkdtemp(join(tmpdir(), "leebench-own-year-"));
});
afterAll(() => rm(dir, { recursive: true, force: true }));

async function ground(of: { runs: boolean }): Promise<Ground> {
  const server = await servePastYear(of);
  const urls = { archiveUrl: server.url, previousRunsUrl: server.url };
  const got = await yearFromArchive({
    site: SITE,
    stage: gardenAt(SITE, ["pelargonium"]),
    journal: [],
    year: 2025,
    nowUtcMs: Date.UTC(2026, 4, 1),
    feed: { ...DEFAULT_FEED_SETTINGS, ...urls, timeoutMs: 5000 },
  });
  await server.close();
  if (!got.ok) throw new Error(JSON.stringify(got.problems));
  return got.value;
}

function askOf() {
  const read = readReplayAsk({ policy: "trade-rules", bound: false });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return { ...read.value, placeIds: [OWN_SITE], years: [2025], groupIds: ["pelargonium"] };
}

describe("a year at the grower's own site", () => {
  it("is the archive's hours with the forecasts that were truly sent, and the same bytes after a break", async () => {
    const own = await ground({ runs: true });
    expect(own.told!.runs).not.toBeNull();
    expect(own.daily.tempMaxC[20]! - own.daily.tempMinC[20]!).toBeGreaterThan(10);
    const whole = await runReplay(askOf(), { grounds: [own] });
    const kept = await keptCellsIn(dir, {});
    await runReplay(askOf(), { grounds: [own], kept });
    const resumed = await runReplay(askOf(), { grounds: [own], kept });
    expect(JSON.stringify(resumed)).toBe(JSON.stringify(whole));
    const text = reportMarkdown(replayReport(askOf(), whole, [own]));
    expect(text).toContain("truly sent");
    expect(text).toContain("Open-Meteo");
  });

  it("has drawn forecasts where the feed keeps none", async () => {
    const own = await ground({ runs: false });
    expect(own.told!.runs).toBeNull();
    const text = reportMarkdown(replayReport(askOf(), await runReplay(askOf(), { grounds: [own] }), [own]));
    expect(text).toContain("drawn with published errors");
  });
});
