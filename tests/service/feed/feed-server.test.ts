import { afterEach, describe, expect, it } from "vitest";
import { type FeedServer, startFeedServer } from "../../../demo/feed-server.ts";
import type { FaultSwitch } from "../../../demo/feed-server-fault.ts";
import type { InventedCourse, InventedWeather } from "../../../demo/invented-weather-type.ts";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { fetchWeather } from "../../../service/feed/fetch-weather.ts";
import { lookUpElevation } from "../../../service/feed/look-up-elevation.ts";
import { searchPlaces } from "../../../service/feed/search-places.ts";
import { NOW_UTC_MS } from "./wire-answers.ts";

const HOUR_MS = 3_600_000;
const SITE = { id: "f", name: "F", latDeg: 12.3, lonDeg: 45.6, elevationM: 20, zone: "UTC" };
const START = Date.UTC(2026, 4, 8);
const STAMPS = 24 * 24;
const column = (value: (j: number) => number) => Array.from({ length: STAMPS }, (_, j) => value(j));

function course(warmerC: number): InventedCourse {
  return {
    tempC: column((j) => 12 + warmerC + (j % 24) / 4),
    dewPointC: column(() => 8),
    rainMm: column((j) => (j % 24 === 17 ? 3 : 0)),
    windMPerS: column(() => 4),
    radiationWPerM2: column((j) => (j % 24 > 6 && j % 24 < 19 ? 250 : 0)),
  };
}

const WEATHER: InventedWeather = {
  startUtcMs: START,
  hours: {
    ...course(0),
    rainChanceFrac: column(() => 0.3),
    gustMPerS: column(() => 9),
    cloudFrac: column(() => 0.25),
    weatherCode: column((j) => (j % 24 === 17 ? 95 : 1)),
    et0Mm: column(() => Number.NaN),
  },
  members: [course(0), course(1), course(-1)],
};
const HAVEN = { id: 7, name: "Testhaven", latDeg: 12.3, lonDeg: 45.6, elevationM: 23, zone: "Asia/Aden" };
const PLACES = [{ ...HAVEN, country: "Testland", countryCode: "ZZ", region: "Shore" }];

const open: FeedServer[] = [];
afterEach(async () => {
  for (const server of open.splice(0)) await server.close();
});

async function standIn() {
  const faults: FaultSwitch = { fault: null };
  const nowUtcMs = () => NOW_UTC_MS;
  const server = await startFeedServer({ weatherAt: () => WEATHER, nowUtcMs, faults, places: PLACES });
  open.push(server);
  const { url } = server;
  const urls = { forecastUrl: url, ensembleUrl: url, geocodingUrl: url, elevationUrl: url, fallbackUrl: url };
  const feed = { ...DEFAULT_FEED_SETTINGS, ...urls, timeoutMs: 1000, demo: true };
  return { server, faults, feed };
}

describe("the stand-in feed", () => {
  it("tells the invented weather as it is, members and all", async () => {
    const { feed } = await standIn();
    const answer = await fetchWeather({ site: SITE, feed, nowUtcMs: NOW_UTC_MS, pastDays: 3 });
    if (!answer.ok) throw new Error(answer.problems[0]?.code);
    const { startUtcMs, hourCount, hours, members, origin } = answer.value;
    expect(origin).toMatchObject({ source: "demo", credit: "Invented weather for the demonstration." });
    expect(startUtcMs).toBe(Date.UTC(2026, 4, 10));
    expect(hourCount).toBe(17 * 24 - 1);
    const first = (startUtcMs - START) / HOUR_MS;
    hours.rainMm.forEach((rainMm, hour) => {
      expect(rainMm).toBe(WEATHER.hours.rainMm[first + hour + 1]);
    });
    expect(hours.feedEt0Mm.every(Number.isNaN)).toBe(true);
    expect(members?.memberCount).toBe(3);
    const noon = 3 * 24 + 12;
    const { tempC } = members!;
    expect(tempC[noon * 3 + 1]! - tempC[noon * 3 + 2]!).toBeCloseTo(2, 9);
    expect(answer.notes).toEqual([]);
  });

  it("tells the same rain in the fallback's direction", async () => {
    const { feed, faults } = await standIn();
    Object.assign(faults, { fault: "down", onPath: "/v1/" });
    const contact = "tests@leebench.example";
    const ask = { site: SITE, feed: { ...feed, contact }, nowUtcMs: NOW_UTC_MS, pastDays: 2 };
    const answer = await fetchWeather(ask);
    if (!answer.ok) throw new Error(answer.problems[0]?.code);
    const { startUtcMs, hours, origin } = answer.value;
    expect(origin.source).toBe("fallback");
    const first = (startUtcMs - START) / HOUR_MS;
    for (let hour = 0; hour < 48; hour += 1) {
      expect(hours.rainMm[hour]).toBe(WEATHER.hours.rainMm[first + hour + 1]);
    }
    expect(hours.weatherCode[16 - 12]).toBe(95);
    const again = await fetchWeather({ ...ask, nowUtcMs: NOW_UTC_MS + HOUR_MS, state: answer.state });
    expect(again.ok && again.value.hours.rainMm.length).toBe(hours.rainMm.length);
  });

  it("finds its places and their height", async () => {
    const { feed } = await standIn();
    const found = await searchPlaces({ name: "test", feed });
    expect(found.ok && found.value[0]).toMatchObject({
      name: "Testhaven",
      zone: "Asia/Aden",
      elevationM: 23,
    });
    expect(await searchPlaces({ name: "else", feed })).toEqual({ ok: true, value: [] });
    expect(await lookUpElevation({ ...SITE, feed })).toEqual({ ok: true, value: 23 });
  });

  it("refuses what the feed would refuse", async () => {
    const { server } = await standIn();
    const status = async (path: string) => (await fetch(server.url + path)).status;
    expect(await status("/v1/forecast?latitude=1&longitude=2&hourly=temperature_2m")).toBe(200);
    expect(await status("/v1/forecast?latitude=1&longitude=2&hourly=temperature_3m")).toBe(400);
    expect(await status("/v1/forecast?latitude=1&longitude=2&forecast_days=17")).toBe(400);
    expect(await status("/v1/forecast?latitude=99&longitude=2")).toBe(400);
    expect(await status("/v1/ensemble?latitude=1&longitude=2&hourly=temperature_2m")).toBe(400);
    expect(await status("/weatherapi/locationforecast/2.0/compact?lat=1&lon=2")).toBe(403);
    expect(await status("/elsewhere")).toBe(404);
  });

  it.each([
    ["down", "feed-cut-short"],
    ["silent", "feed-timeout"],
    ["throttled", "feed-throttled"],
    ["overloaded", "feed-server-error"],
    ["html", "feed-server-error"],
    ["text", "feed-not-json"],
    ["half", "feed-not-json"],
    ["all-null", "feed-no-temperature"],
    ["nan", "used"],
  ] as const)("misbehaves on demand: %s", async (fault, state) => {
    const { feed, faults } = await standIn();
    faults.fault = fault;
    const answer = await fetchWeather({ site: SITE, feed, nowUtcMs: NOW_UTC_MS, pastDays: 2 });
    expect(answer.ok ? "used" : answer.problems[0]?.code).toBe(state);
  });
});
