import { afterEach, describe, expect, it } from "vitest";
import type { CalendarDay } from "../../../core/site/site.ts";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { fetchPastYear } from "../../../service/feed/open-meteo/archive.ts";
import type { Loopback } from "./loopback-server.ts";
import { servePastYear } from "./past-year-server.ts";

const open: Loopback[] = [];
afterEach(async () => {
  for (const server of open.splice(0)) await server.close();
});

const SPAN = { fromDay: "2025-01-01" as CalendarDay, toDay: "2025-07-01" as CalendarDay };

async function fetched(of: { runs: boolean }) {
  const server = await servePastYear(of);
  open.push(server);
  const feed = {
    ...DEFAULT_FEED_SETTINGS,
    archiveUrl: server.url,
    previousRunsUrl: server.url,
    timeoutMs: 2000,
  };
  const point = { latDeg: 48.123_456, lonDeg: 11.5, elevationM: 520 };
  const got = await fetchPastYear({ point, feed, nowUtcMs: Date.UTC(2026, 0, 5), ...SPAN });
  return { got, urls: server.urls };
}

describe("past days from the feed", () => {
  it("come in a few calls, without a hole where two of them join, each run under its own age", async () => {
    const { got, urls } = await fetched({ runs: true });
    if (!got.ok) throw new Error(JSON.stringify(got.problems));
    const { startUtcMs, hours, runs } = got.value;
    expect(new Date(startUtcMs).toISOString()).toBe("2025-01-01T00:00:00.000Z");
    // 182 days have an hour less than their stamps at the very end only.
    expect(hours.tempC).toHaveLength(182 * 24 - 1);
    expect(hours.tempC.every(Number.isFinite)).toBe(true);
    expect(hours.rainMm.reduce((a, b) => a + b, 0)).toBeCloseTo(6 * 60, 6);
    expect(runs!.byLeadDay).toHaveLength(8);
    for (const [leadDay, run] of runs!.byLeadDay.entries()) {
      expect(run.tempC[100]! - hours.tempC[100]!).toBeCloseTo(leadDay, 6);
    }
    expect(urls).toHaveLength(6);
    for (const url of urls) {
      expect(url.searchParams.get("latitude")).toBe("48.123");
      expect(url.searchParams.get("timezone")).toBe("GMT");
    }
    expect(urls[1]!.searchParams.get("hourly")).toContain("precipitation_previous_day7");
  });

  it("do without previous runs when those fail, with a note of why", async () => {
    const { got } = await fetched({ runs: false });
    if (!got.ok) throw new Error(JSON.stringify(got.problems));
    expect(got.value.runs).toBeNull();
    expect(got.value.notes.map(({ code }) => code)).toEqual(["feed-server-error"]);
  });
});
