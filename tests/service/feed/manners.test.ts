import { describe, expect, it } from "vitest";
import type { Problem } from "../../../core/problem.ts";
import { afterBad, afterGood, isOpen } from "../../../service/feed/back-off.ts";
import { takeCall } from "../../../service/feed/call-cap.ts";
import { chooseFeed, FALLBACK_AFTER_MS } from "../../../service/feed/choose-feed.ts";
import { callWeight, DAILY_WEIGHT_BUDGET, spend } from "../../../service/feed/day-budget.ts";
import { type FeedState, INITIAL_FEED_STATE, readFeedState } from "../../../service/feed/feed-state.ts";
import { jitterFrac } from "../../../service/feed/jitter.ts";
import { pullDueUtcMs } from "../../../service/feed/pull-due.ts";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const NOW = Date.UTC(2026, 4, 13, 12, 20);
const DOWN: Problem = { code: "feed-refused", path: [], data: {} };
const FRESH = INITIAL_FEED_STATE.forecast;

function waitsMs(problem: Problem, jitter = 0): number[] {
  const waits: number[] = [];
  let line = FRESH;
  for (let failure = 0; failure < 8; failure += 1) {
    line = afterBad(line, { nowUtcMs: NOW, jitterFrac: jitter, problem });
    waits.push(line.notBeforeUtcMs - NOW);
  }
  return waits;
}

describe("the rest after a failure", () => {
  it("doubles from two minutes to an hour", () => {
    const minutes = waitsMs(DOWN).map((ms) => ms / MINUTE_MS);
    expect(minutes).toEqual([2, 4, 8, 16, 32, 60, 60, 60]);
  });

  it("is stretched by up to half so that houses fall out of step", () => {
    expect(waitsMs(DOWN, 0.999)[0]).toBeGreaterThan(2.9 * MINUTE_MS);
    expect(waitsMs(DOWN, 0.999)[0]).toBeLessThan(3 * MINUTE_MS);
  });

  it("is an hour at once for what will not mend by itself", () => {
    expect(waitsMs({ code: "feed-denied", path: [] })[0]).toBe(HOUR_MS);
  });

  it.each([
    [{ retryAfterS: 900 }, 15],
    [{ retryAfterS: 10 }, 2],
    [{ reason: "Minutely request limit exceeded." }, 2],
    [{ reason: "Hourly request limit exceeded." }, 40],
    [{ reason: "Daily request limit exceeded." }, 11 * 60 + 40],
  ])("when throttled with %j is %d minutes at 12:20", (data, minutes) => {
    expect(waitsMs({ code: "feed-throttled", path: [], data })[0]).toBe(minutes * MINUTE_MS);
  });

  it("is over for a clock that was put back", () => {
    const line = afterBad(FRESH, { nowUtcMs: NOW, jitterFrac: 0, problem: DOWN });
    expect(isOpen(line, NOW)).toBe(false);
    expect(isOpen(line, NOW - 30 * 24 * HOUR_MS)).toBe(true);
  });
});

describe("which feed is asked", () => {
  const choose = (state: Partial<FeedState>, nowUtcMs = NOW, fallbackReady = true) =>
    chooseFeed({ state: { ...INITIAL_FEED_STATE, ...state }, nowUtcMs, fallbackReady });
  const good = afterGood(NOW - 3 * HOUR_MS);
  const failing = (sinceMs: number, restMs: number) => ({
    ...good,
    failuresInRow: 4,
    failingSinceUtcMs: NOW - sinceMs,
    notBeforeUtcMs: NOW + restMs,
  });

  it("the primary, with the fallback behind it, while there never was a forecast", () => {
    expect(choose({})).toEqual({ ask: ["forecast", "fallback"] });
    expect(choose({}, NOW, false)).toEqual({ ask: ["forecast"] });
  });

  it("the primary alone while it is well or has failed for a short time", () => {
    expect(choose({ forecast: good })).toEqual({ ask: ["forecast"] });
    expect(choose({ forecast: failing(FALLBACK_AFTER_MS - 1, 0) })).toEqual({ ask: ["forecast"] });
  });

  it("the fallback behind it once the primary has failed for a while, and alone while it rests", () => {
    expect(choose({ forecast: failing(FALLBACK_AFTER_MS, 0) })).toEqual({ ask: ["forecast", "fallback"] });
    expect(choose({ forecast: failing(FALLBACK_AFTER_MS, 1) })).toEqual({ ask: ["fallback"] });
  });

  it("nobody within the hour of a good answer, nor while the feed rests", () => {
    const justNow = afterGood(NOW);
    expect(choose({ forecast: justNow })).toEqual({
      ask: [],
      because: "not-due",
      untilUtcMs: NOW + HOUR_MS,
    });
    expect(choose({ forecast: failing(HOUR_MS, 5) })).toEqual({
      ask: [],
      because: "resting",
      untilUtcMs: NOW + 5,
    });
    const both = { forecast: failing(FALLBACK_AFTER_MS, 9), fallback: justNow };
    expect(choose(both)).toEqual({ ask: [], because: "not-due", untilUtcMs: NOW + 9 });
  });
});

describe("the day's budget", () => {
  /** Weights as the primary feed's documentation counts them, read in its source's own tests and pricing page. */
  it.each([
    [{ variables: 3, members: 51, days: 7 }, 15.3],
    [{ variables: 16, members: 1, days: 16 }, 1.83],
    [{ variables: 1, members: 1, days: 1 }, 1],
  ])("%j weighs %d", (call, weight) => {
    expect(callWeight(call)).toBeCloseTo(weight, 2);
  });

  it("cannot be exceeded in a day and is new the next", () => {
    let budget: FeedState["budget"] | null = INITIAL_FEED_STATE.budget;
    let calls = 0;
    while (budget !== null && calls < 10_000) {
      budget = spend(budget, { nowUtcMs: NOW, weight: 30 });
      if (budget !== null) calls += 1;
    }
    expect(calls).toBe(Math.floor(DAILY_WEIGHT_BUDGET / 30));
    const full = { utcDay: Math.floor(NOW / (24 * HOUR_MS)), spentCalls: DAILY_WEIGHT_BUDGET };
    expect(spend(full, { nowUtcMs: NOW, weight: 1 })).toBeNull();
    expect(spend(full, { nowUtcMs: NOW + 12 * HOUR_MS, weight: 1 })?.spentCalls).toBe(1);
  });

  it("of a process holds for a host whatever state a caller passes", () => {
    const rule = { nowUtcMs: NOW, cap: 3 };
    const taken = Array.from({ length: 5 }, () => takeCall("http://cap.invalid", rule));
    expect(taken).toEqual([true, true, true, false, false]);
    expect(takeCall("http://other.invalid", rule)).toBe(true);
    expect(takeCall("http://cap.invalid", { ...rule, nowUtcMs: NOW + 24 * HOUR_MS })).toBe(true);
  });
});

describe("jitter", () => {
  it("spreads neighbours over the whole range", () => {
    const shares = Array.from({ length: 400 }, (_, n) => jitterFrac("site", n));
    const tenths = new Set(shares.map((share) => Math.floor(share * 10)));
    expect(tenths.size).toBe(10);
    expect(shares.reduce((sum, share) => sum + share, 0) / 400).toBeCloseTo(0.5, 1);
  });

  it("delays the next pull by three hours and less than twenty minutes more", () => {
    const site = { id: "a", name: "A", latDeg: 1, lonDeg: 2, elevationM: 3, zone: "UTC" };
    const dueMs = pullDueUtcMs({ ...INITIAL_FEED_STATE, forecast: afterGood(NOW) }, site) - NOW;
    expect(dueMs).toBeGreaterThanOrEqual(3 * HOUR_MS);
    expect(dueMs).toBeLessThan(3 * HOUR_MS + 20 * MINUTE_MS);
    expect(pullDueUtcMs(INITIAL_FEED_STATE, site)).toBe(0);
  });
});

describe("the state kept between calls", () => {
  it("comes back from JSON as it was, and starts anew from anything else", () => {
    const state = { ...INITIAL_FEED_STATE, forecast: afterGood(NOW) };
    expect(readFeedState(JSON.parse(JSON.stringify(state)))).toEqual(state);
    expect(readFeedState({ version: 0 })).toEqual(INITIAL_FEED_STATE);
    expect(readFeedState(undefined)).toEqual(INITIAL_FEED_STATE);
  });
});
