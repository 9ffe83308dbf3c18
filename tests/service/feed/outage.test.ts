import { afterEach, describe, expect, it } from "vitest";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { type FeedState, INITIAL_FEED_STATE } from "../../../service/feed/feed-state.ts";
import { fetchWeather } from "../../../service/feed/fetch-weather.ts";
import { type Loopback, serveHttp } from "./loopback-server.ts";
import { ensembleBody, fallbackBody, forecastBody, NOW_UTC_MS } from "./wire-answers.ts";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const SITE = { id: "o", name: "O", latDeg: 12.3, lonDeg: 45.6, elevationM: 20, zone: "UTC" };

const open: Loopback[] = [];
afterEach(async () => {
  for (const server of open.splice(0)) await server.close();
});

/** Both feeds on one loopback, the primary and the ensemble switchable, every call counted. */
async function house(expiresMs = 40 * MINUTE_MS) {
  const calls: Record<string, number> = { forecast: 0, ensemble: 0, fallback: 0, unchanged: 0 };
  const up = { forecast: true, ensemble: true, dayIsSpent: false };
  const modified = new Date(NOW_UTC_MS - HOUR_MS).toUTCString();
  let nowUtcMs = NOW_UTC_MS;
  const server = await serveHttp((request, response) => {
    const json = (body: unknown, headers = {}) => response.writeHead(200, headers).end(JSON.stringify(body));
    if (request.url?.startsWith("/v1/forecast")) {
      calls.forecast! += 1;
      if (up.forecast) json(forecastBody());
      else response.writeHead(502).end("<html>");
    } else if (request.url?.startsWith("/v1/ensemble")) {
      calls.ensemble! += 1;
      const reason = "Daily API request limit exceeded.";
      if (up.dayIsSpent) response.writeHead(429).end(JSON.stringify({ error: true, reason }));
      else if (up.ensemble) json(ensembleBody());
      else response.writeHead(503).end();
    } else {
      calls.fallback! += 1;
      const expires = new Date(nowUtcMs + expiresMs).toUTCString();
      const headers = { expires, "last-modified": modified };
      if (request.headers["if-modified-since"] === modified) {
        calls.unchanged! += 1;
        response.writeHead(304, headers).end();
      } else json(fallbackBody(), headers);
    }
  });
  open.push(server);
  const { url } = server;
  const feed = {
    ...DEFAULT_FEED_SETTINGS,
    forecastUrl: url,
    ensembleUrl: url,
    fallbackUrl: url,
    timeoutMs: 500,
    dailyCallCap: 100_000,
    contact: "tests@leebench.example",
  };
  let state: FeedState = INITIAL_FEED_STATE;
  const ask = async (atUtcMs: number) => {
    nowUtcMs = atUtcMs;
    const answer = await fetchWeather({ site: SITE, feed, nowUtcMs, pastDays: 2, state });
    // As a store would: through JSON.
    state = JSON.parse(JSON.stringify(answer.state)) as FeedState;
    return answer;
  };
  return { calls, up, ask };
}

describe("an outage of six hours, asked about every minute", () => {
  it("calls the primary a few times, changes to the fallback and back, and never storms", async () => {
    const { calls, up, ask } = await house();
    expect((await ask(NOW_UTC_MS)).ok).toBe(true);
    up.forecast = false;
    const sources: string[] = [];
    for (let minute = 61; minute <= 7 * 60; minute += 1) {
      const answer = await ask(NOW_UTC_MS + minute * MINUTE_MS);
      if (answer.ok) sources.push(answer.value.origin.source);
    }
    // Failures at 0, 2, 6, 14, 30, 62 minutes and hourly from then, each up to half as long again.
    expect(calls.forecast).toBeGreaterThanOrEqual(1 + 8);
    expect(calls.forecast).toBeLessThanOrEqual(1 + 12);
    expect(calls.ensemble).toBe(1);
    expect(new Set(sources)).toEqual(new Set(["fallback"]));
    // From two hours after the first failure, once an hour.
    expect(calls.fallback).toBeGreaterThanOrEqual(3);
    expect(calls.fallback).toBeLessThanOrEqual(5);
    expect(calls.unchanged).toBe(calls.fallback! - 1);
    up.forecast = true;
    const back: string[] = [];
    for (let minute = 7 * 60 + 1; minute <= 9 * 60 && back.at(-1) !== "primary"; minute += 1) {
      const answer = await ask(NOW_UTC_MS + minute * MINUTE_MS);
      if (answer.ok) back.push(answer.value.origin.source);
    }
    expect(back.at(-1)).toBe("primary");
  });
});

describe("a day in which a bug asks every second", () => {
  it("makes one call an hour to each of forecast and ensemble", async () => {
    const { calls, ask } = await house();
    for (let second = 0; second < 4 * 3600; second += 1) await ask(NOW_UTC_MS + second * 1000);
    expect(calls).toEqual({ forecast: 4, ensemble: 4, fallback: 0, unchanged: 0 });
  });
});

describe("an ensemble that is down", () => {
  it("rests on its own beside a good forecast", async () => {
    const { calls, up, ask } = await house();
    up.ensemble = false;
    const first = await ask(NOW_UTC_MS);
    expect(first.ok && first.value.members).toBeNull();
    expect(first.notes.map((note) => note.code)).toEqual(["feed-server-error"]);
    up.ensemble = true;
    const second = await ask(NOW_UTC_MS + HOUR_MS);
    expect(second.ok && second.value.members?.memberCount).toBe(4);
    expect(calls.ensemble).toBe(2);
  });
});

describe("an ensemble whose day is spent", () => {
  it("is left alone until the next, the forecast is not", async () => {
    const { calls, up, ask } = await house();
    up.dayIsSpent = true;
    for (let hour = 0; hour < 11; hour += 1) {
      const answer = await ask(NOW_UTC_MS + hour * HOUR_MS);
      expect(answer.ok).toBe(true);
      expect(answer.notes[0]?.code).toBe(hour === 0 ? "feed-throttled" : "feed-resting");
    }
    expect(calls).toMatchObject({ forecast: 11, ensemble: 1 });
    up.dayIsSpent = false;
    const tomorrow = await ask(NOW_UTC_MS + 12 * HOUR_MS);
    expect(tomorrow.ok && tomorrow.value.members?.memberCount).toBe(4);
  });
});

describe("a house that never had a forecast", () => {
  it("takes the fallback at once, and says without a contact why not", async () => {
    const { up, ask } = await house();
    up.forecast = false;
    const answer = await ask(NOW_UTC_MS);
    expect(answer.ok && answer.value.origin.source).toBe("fallback");
    expect(answer.notes.map((note) => note.code)).toEqual(["feed-server-error", "feed-coarse-tail"]);
  });
});

describe("an answer of the fallback that is still good", () => {
  it("is used again without a call until it expires", async () => {
    const { calls, up, ask } = await house(3 * HOUR_MS);
    up.forecast = false;
    const at = async (hours: number) => {
      const answer = await ask(NOW_UTC_MS + hours * HOUR_MS);
      if (!answer.ok) throw new Error(answer.problems[0]?.code);
      return { fetchedUtcMs: answer.value.origin.fetchedUtcMs, calls: calls.fallback };
    };
    expect(await at(0)).toEqual({ fetchedUtcMs: NOW_UTC_MS, calls: 1 });
    expect(await at(1)).toEqual({ fetchedUtcMs: NOW_UTC_MS, calls: 1 });
    expect(await at(2)).toEqual({ fetchedUtcMs: NOW_UTC_MS, calls: 1 });
    expect(await at(3)).toEqual({ fetchedUtcMs: NOW_UTC_MS + 3 * HOUR_MS, calls: 2 });
    expect(calls.unchanged).toBe(1);
  });
});

describe("two jobs that ask at the same moment", () => {
  it("share one call", async () => {
    const { calls, ask } = await house();
    const [one, other] = await Promise.all([ask(NOW_UTC_MS), ask(NOW_UTC_MS)]);
    expect(one.ok && other.ok).toBe(true);
    expect(calls).toMatchObject({ forecast: 1, ensemble: 1 });
  });
});
