import { existsSync, readFileSync } from "node:fs";
import { afterEach, describe, expect, it } from "vitest";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { fetchWeather } from "../../../service/feed/fetch-weather.ts";
import { lookUpElevation } from "../../../service/feed/look-up-elevation.ts";
import { searchPlaces } from "../../../service/feed/search-places.ts";
import { type Loopback, serveHttp } from "./loopback-server.ts";

/*
 * Real answers of both feeds, replayed over HTTP. Data: Open-Meteo (CC BY 4.0), MET Norway (NLOD 2.0, CC BY 4.0).
 * The folder of recordings does not come with the project.
 */
const FOLDER = new URL("../../../../shared/feed-recorded/", import.meta.url);
const HOUR_MS = 3_600_000;
const hasRecordings = existsSync(FOLDER);
const title = hasRecordings
  ? "recorded answers over HTTP"
  : "recorded answers over HTTP (skipped: no folder of recordings beside the project)";

const open: Loopback[] = [];
afterEach(async () => {
  for (const server of open.splice(0)) await server.close();
});

/** The feed with one recording for an answer at one path, and nothing elsewhere. */
async function replaying(file: string, path: string) {
  const body = readFileSync(new URL(file, FOLDER));
  const server = await serveHttp((request, response) => {
    const found = request.url?.startsWith(path);
    response.writeHead(found ? 200 : 404, { "content-type": "application/json; charset=utf-8" });
    response.end(found ? body : "");
  });
  open.push(server);
  const { url } = server;
  const urls = { forecastUrl: url, ensembleUrl: url, geocodingUrl: url, elevationUrl: url, fallbackUrl: url };
  return { ...DEFAULT_FEED_SETTINGS, ...urls, timeoutMs: 2000, contact: "tests@leebench.example" };
}

interface Recorded {
  hourly: Record<string, (number | null)[]>;
  daily: Record<string, number[]>;
}

function recorded(file: string): Recorded {
  return JSON.parse(readFileSync(new URL(file, FOLDER), "utf8")) as Recorded;
}

async function forecastIn(file: string, place: { latDeg: number; lonDeg: number; nowUtcMs: number }) {
  const feed = await replaying(file, "/v1/forecast");
  const site = { id: "replay", name: "Replay", elevationM: 20, zone: "UTC", ...place };
  return fetchWeather({ site, feed, nowUtcMs: place.nowUtcMs, pastDays: 2 });
}

/** Sums or maxima of hours by the feed's own day: stamps 00 to 23, which end hours -1 to 22 of that day. */
function byFeedDay(column: Float64Array, gather: (values: number[]) => number): number[] {
  const days = Math.floor((column.length + 1) / 24);
  return Array.from({ length: days - 1 }, (_, d) =>
    gather([...column.slice(24 * (d + 1) - 1, 24 * (d + 2) - 1)]),
  );
}

const sum = (values: number[]) => values.reduce((total, value) => total + value, 0);
const largest = (values: number[]) => Math.max(...values);

describe.skipIf(!hasRecordings)(title, () => {
  it("New York: seven days without humidity or radiation are used, and what is wanting is told", async () => {
    const file = "om-forecast-nyc-2026-02-06.json";
    const nowUtcMs = Date.UTC(2026, 1, 6, 21, 30);
    const answer = await forecastIn(file, { latDeg: 40.789, lonDeg: -73.966, nowUtcMs });
    if (!answer.ok) throw new Error(answer.problems[0]?.code);
    const { startUtcMs, hourCount, hours, members } = answer.value;
    expect(startUtcMs).toBe(Date.UTC(2026, 1, 6, 5));
    expect(hourCount).toBe(167);
    expect(members).toBeNull();
    expect(hours.tempC[1]).toBeCloseTo((-7.1 - 8.5) / 2, 9);
    expect(hours.windMPerS[0]).toBeCloseTo((4.3 + 9.3) / 2 / 3.6, 9);
    expect(hours.dewPointC.every(Number.isNaN)).toBe(true);
    expect(hours.radiationMjPerM2.every(Number.isNaN)).toBe(true);
    const missing = answer.notes.filter((note) => note.code === "feed-column-missing");
    expect(missing.map((note) => note.data?.column)).toEqual(
      expect.arrayContaining(["dew_point_2m", "shortwave_radiation", "cloud_cover"]),
    );
    // The feed's own daily sums, printed to 0.1 mm after adding hours printed to 0.1 mm.
    const dailyMm = recorded(file).daily.precipitation_sum!.slice(1);
    byFeedDay(hours.rainMm, sum).forEach((rainMm, d) => {
      expect(Math.abs(rainMm - dailyMm[d]!)).toBeLessThanOrEqual(0.05);
    });
  });

  it("Toronto: eight days across the clock change keep one hour after another", async () => {
    const file = "om-forecast-toronto-dst-2026-03-05.json";
    const nowUtcMs = Date.UTC(2026, 2, 6, 2);
    const answer = await forecastIn(file, { latDeg: 43.7, lonDeg: -79.4, nowUtcMs });
    if (!answer.ok) throw new Error(answer.problems[0]?.code);
    const { startUtcMs, hourCount, hours } = answer.value;
    expect(answer.notes.map((note) => note.code)).not.toContain("feed-hours-missing");
    expect(startUtcMs).toBe(Date.UTC(2026, 2, 4, 5));
    expect(hourCount).toBe(191);
    // 32.0 and 31.2 °F at both ends of the first hour.
    expect(hours.tempC[0]).toBeCloseTo((32 + 31.2 - 64) / 2 / 1.8, 9);
    // Row "2026-03-08T02:00", an hour that no clock there showed, is 07:00 UTC.
    const changeHour = (Date.UTC(2026, 2, 8, 7) - startUtcMs) / HOUR_MS;
    expect(changeHour).toBe(98);
    expect(hours.tempC[changeHour]).not.toBeNaN();
    const { daily } = recorded(file);
    byFeedDay(hours.gustMPerS, largest).forEach((gustMPerS, d) => {
      expect(gustMPerS / 0.44704).toBeCloseTo(daily.wind_gusts_10m_max![d + 1]!, 6);
    });
    byFeedDay(hours.feedRainChanceFrac, largest).forEach((chanceFrac, d) => {
      expect(chanceFrac * 100).toBeCloseTo(daily.precipitation_probability_max![d + 1]!, 6);
    });
    // Printed to 0.001 inch; the feed converts and rounds after summing, each of 24 hours before: measured 0.001 off.
    byFeedDay(hours.rainMm, sum).forEach((rainMm, d) => {
      expect(Math.abs(rainMm / 25.4 - daily.precipitation_sum![d + 1]!)).toBeLessThanOrEqual(0.0015);
    });
  });

  it("every variable: the units are known, and what is not offered is not a zero", async () => {
    const file = "om-forecast-all-variables-trimmed-2026-10-03.json";
    const nowUtcMs = Date.UTC(2026, 9, 2, 22, 30);
    const answer = await forecastIn(file, { latDeg: 52.276, lonDeg: 6.873, nowUtcMs });
    if (!answer.ok) throw new Error(answer.problems[0]?.code);
    expect(answer.value.startUtcMs).toBe(Date.UTC(2026, 9, 2, 22));
    expect(answer.value.hourCount).toBe(2);
    expect(answer.value.hours.dewPointC[0]).toBeCloseTo((9.7 + 9.6) / 2, 9);
    expect(answer.value.hours.cloudFrac[0]).toBeCloseTo((0.01 + 0.48) / 2, 9);
    expect(answer.notes.map((note) => note.code)).toEqual(["feed-not-found"]);
  });

  it("sixteen days: the end of the series, all null, is no forecast", async () => {
    const nowUtcMs = Date.UTC(2026, 9, 18, 21);
    const answer = await forecastIn("om-forecast-16days-trailing-nulls-2026-10-03.json", {
      latDeg: 52.276,
      lonDeg: 6.873,
      nowUtcMs,
    });
    expect(answer.ok ? "used" : answer.problems[0]?.code).toBe("feed-no-temperature");
  });

  it.each([
    ["om-previous-runs-2026-10-03.json", Date.UTC(2026, 9, 2, 1), "used"],
    ["om-archive-1953.json", Date.UTC(2026, 9, 3, 12), "feed-wrong-time"],
    ["om-satellite-not-covered-INVALID-JSON.txt", Date.UTC(2026, 9, 3, 12), "feed-bad-shape"],
  ])("%s as a forecast ends in a stated state", async (file, nowUtcMs, state) => {
    const answer = await forecastIn(file, { latDeg: 52.3, lonDeg: 6.9, nowUtcMs });
    expect(answer.ok ? "used" : answer.problems[0]?.code).toBe(state);
  });

  it("21 members are found by their keys", async () => {
    const ensemble = readFileSync(new URL("om-ensemble-21members-2026-10-03.json", FOLDER), "utf8");
    const forecast = JSON.stringify({
      hourly_units: { temperature_2m: "°C" },
      hourly: { time: ["2026-10-03T00:00", "2026-10-03T01:00"], temperature_2m: [10.4, 10.2] },
    });
    const server = await serveHttp((request, response) => {
      response.writeHead(200).end(request.url?.startsWith("/v1/ensemble") ? ensemble : forecast);
    });
    open.push(server);
    const feed = { ...DEFAULT_FEED_SETTINGS, forecastUrl: server.url, ensembleUrl: server.url };
    const site = { id: "e", name: "E", latDeg: 52.5, lonDeg: 7, elevationM: 29, zone: "UTC" };
    const answer = await fetchWeather({ site, feed, nowUtcMs: Date.UTC(2026, 9, 3), pastDays: 2 });
    if (!answer.ok) throw new Error(answer.problems[0]?.code);
    expect(answer.value.members?.memberCount).toBe(21);
    expect(answer.value.members?.tempC[0]).toBeCloseTo((10.5 + 10.1) / 2, 9);
    expect(answer.value.members?.tempC[20]).toBeCloseTo((11.1 + 10.8) / 2, 9);
    expect(answer.value.members?.rainMm.every(Number.isNaN)).toBe(true);
  });

  it("Oslo from the fallback: hourly, then six-hourly, to the last step", async () => {
    const feed = await replaying("metno-compact-yr.json", "/weatherapi/");
    const site = { id: "o", name: "O", latDeg: 59.9139, lonDeg: 10.7522, elevationM: 5, zone: "Europe/Oslo" };
    const nowUtcMs = Date.UTC(2026, 1, 6, 20, 40);
    const answer = await fetchWeather({ site, feed, nowUtcMs, pastDays: 2 });
    if (!answer.ok) throw new Error(answer.problems[0]?.code);
    const { origin, startUtcMs, hourCount, hours } = answer.value;
    expect(origin.source).toBe("fallback");
    expect(origin.credit).toContain("MET Norway");
    // The first step is 21:00; its values hold back to the hour we are in. The last is 18:00 on the 16th.
    expect(startUtcMs).toBe(Date.UTC(2026, 1, 6, 20));
    expect(hourCount).toBe(238);
    expect(hours.tempC[1]).toBeCloseTo((-5.8 - 5.9) / 2, 9);
    // The amount told at 21:00 falls between 21:00 and 22:00, which is hour 1.
    expect([...hours.rainMm.slice(1, 3)]).toEqual([0.5, 0.7]);
    expect(hours.weatherCode[1]).toBe(73);
    expect(hours.rainMm.some(Number.isNaN)).toBe(false);
    expect(hours.dewPointC.some(Number.isNaN)).toBe(false);
    expect(hours.radiationMjPerM2.every(Number.isNaN)).toBe(true);
    expect(origin.coarseFromUtcMs).toBe(Date.UTC(2026, 1, 9));
  });

  it("places: found with what they have, and the terrain's height", async () => {
    const full = await replaying("om-geocoding-enschede.json", "/v1/search");
    const places = await searchPlaces({ name: "Enschede", feed: full });
    expect(places.ok && places.value[0]).toMatchObject({
      name: "Enschede",
      latDeg: 52.21833,
      elevationM: 45,
      zone: "Europe/Amsterdam",
      region: "Overijssel",
      countryCode: "NL",
    });
    const partial = await replaying("om-geocoding-missing-fields.json", "/v1/search");
    const sparse = await searchPlaces({ name: "Antarctica", feed: partial });
    expect(sparse.ok && sparse.value.length).toBe(3);
    expect(sparse.ok && sparse.value[0]).toMatchObject({ name: "Antarctica", country: null, region: null });
    const height = await lookUpElevation({
      latDeg: 52.276,
      lonDeg: 6.873,
      feed: await replaying("om-elevation.json", "/v1/elevation"),
    });
    expect(height).toEqual({ ok: true, value: 29 });
  });
});
