import { existsSync, readFileSync } from "node:fs";
import { afterEach, describe, expect, it } from "vitest";
import { plan } from "../../../core/plan/make-plan.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import { DEFAULT_SETTINGS } from "../../../core/plan/settings.ts";
import { demoCollection } from "../../../demo/harbour.ts";
import { demoJournal } from "../../../demo/harbour-journal.ts";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { fetchWeather } from "../../../service/feed/fetch-weather.ts";
import { type Loopback, serveHttp } from "./loopback-server.ts";

/*
 * Real answers through the whole line: over HTTP, onto the hour axis, through the ladder, to a plan for the invented
 * collection as if it stood there. Data: Open-Meteo (CC BY 4.0), MET Norway (NLOD 2.0, CC BY 4.0).
 */
const FOLDER = new URL("../../../../shared/feed-recorded/", import.meta.url);
const hasRecordings = existsSync(FOLDER);
const title = hasRecordings
  ? "recorded answers to a plan"
  : "recorded answers to a plan (skipped: no folder of recordings beside the project)";

const open: Loopback[] = [];
afterEach(async () => {
  for (const server of open.splice(0)) await server.close();
});

interface Replay {
  readonly file: string;
  readonly path: string;
  readonly nowUtcMs: number;
  readonly site: { latDeg: number; lonDeg: number; elevationM: number; zone: string };
}

const REPLAYS = {
  newYork: {
    file: "om-forecast-nyc-2026-02-06.json",
    path: "/v1/forecast",
    nowUtcMs: Date.UTC(2026, 1, 7, 11),
    site: { latDeg: 40.789, lonDeg: -73.966, elevationM: 20, zone: "America/New_York" },
  },
  toronto: {
    file: "om-forecast-toronto-dst-2026-03-05.json",
    path: "/v1/forecast",
    nowUtcMs: Date.UTC(2026, 2, 6, 11),
    site: { latDeg: 43.7, lonDeg: -79.4, elevationM: 165, zone: "America/Toronto" },
  },
  oslo: {
    file: "metno-compact-yr.json",
    path: "/weatherapi/",
    nowUtcMs: Date.UTC(2026, 1, 6, 20, 40),
    site: { latDeg: 59.914, lonDeg: 10.752, elevationM: 5, zone: "Europe/Oslo" },
  },
} as const satisfies Record<string, Replay>;

async function planFrom({ file, path, nowUtcMs, site: place }: Replay): Promise<Plan> {
  const body = readFileSync(new URL(file, FOLDER));
  const server = await serveHttp((request, response) => {
    const found = request.url?.startsWith(path);
    response.writeHead(found ? 200 : 503, { "content-type": "application/json" }).end(found ? body : "");
  });
  open.push(server);
  const { url } = server;
  const urls = { forecastUrl: url, ensembleUrl: url, fallbackUrl: url };
  const feed = { ...DEFAULT_FEED_SETTINGS, ...urls, timeoutMs: 2000, contact: "tests@leebench.example" };
  const site = { ...demoCollection.site, ...place };
  const answer = await fetchWeather({ site, feed, nowUtcMs, pastDays: 2 });
  if (!answer.ok) throw new Error(answer.problems[0]?.code);
  const collection = { ...demoCollection, site };
  const journal = demoJournal(nowUtcMs);
  return plan({ collection, journal, weather: answer.value, nowUtcMs, settings: DEFAULT_SETTINGS });
}

function standsIn(made: Plan): string[] {
  return made.weatherAge.standIns.map((standIn) => standIn.quantity);
}

function allFinite(value: unknown): boolean {
  if (typeof value === "number") return Number.isFinite(value);
  if (typeof value !== "object" || value === null) return true;
  return Object.values(value).every(allFinite);
}

describe.skipIf(!hasRecordings)(title, () => {
  it("New York: the plan stands on the ladder and says so", async () => {
    const made = await planFrom(REPLAYS.newYork);
    expect(standsIn(made)).toEqual(expect.arrayContaining(["radiation", "humidity", "members"]));
    expect(made.weatherAge.trust).not.toBe("full");
    expect(made.weatherAge.memberCount).toBe(0);
    expect(made.weatherAge.credit).toContain("open-meteo.com");
    // The series ends at 04:00 UTC on the thirteenth; the plan reckons to there and no further.
    expect(made.weatherAge.knownHours).toBe(137);
    expect(made.pots.length).toBeGreaterThan(15);
    expect(allFinite(made)).toBe(true);
    // The feed itself tells -21.5 °C for the eighth, in a week with frost on each day.
    expect(Math.min(...made.days.map((day) => day.tempMinC.mid))).toBeLessThan(-18);
  });

  it("Toronto: local days across the clock change follow one another", async () => {
    const made = await planFrom(REPLAYS.toronto);
    expect(made.days.map((day) => day.day)).toEqual([
      "2026-03-06",
      "2026-03-07",
      "2026-03-08",
      "2026-03-09",
      "2026-03-10",
      "2026-03-11",
    ]);
    expect(standsIn(made)).toEqual(expect.arrayContaining(["radiation", "humidity"]));
    expect(allFinite(made)).toBe(true);
  });

  it("Oslo: the fallback carries a plan, named as what it is", async () => {
    const made = await planFrom(REPLAYS.oslo);
    expect(made.weatherAge.source).toBe("fallback");
    expect(made.weatherAge.credit).toContain("MET Norway");
    expect(standsIn(made)).toEqual(expect.arrayContaining(["radiation", "members"]));
    expect(standsIn(made)).not.toContain("humidity");
    expect(made.weatherAge.knownHours).toBeGreaterThan(100);
    expect(allFinite(made)).toBe(true);
  });
});
