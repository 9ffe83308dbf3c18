import { describe, expect, it } from "vitest";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { withPast } from "../../../service/store/past-hours.ts";
import { fill } from "./bench.ts";
import { someWeather } from "./some-weather.ts";
import { emptyStore } from "./test-store.ts";

const START = Date.parse("2031-05-01T00:00Z");

describe("kept weather", () => {
  it("comes back as it was known, newest pull first, with its true age", async () => {
    const store = await emptyStore();
    await fill(store);
    expect(await store.weather.latest("yard")).toBeNull();
    const early = someWeather({ value: (_, hour) => hour / 7, memberCount: 3 });
    const late = someWeather({ value: (_, hour) => hour / 3, fetchedUtcMs: START + 30 * HOUR_MS });
    const earlyId = await store.weather.save("yard", early);
    const lateId = await store.weather.save("yard", late);
    expect(await store.weather.latest("yard")).toEqual({ ...late, pullId: lateId });
    expect(await store.weather.pull(earlyId)).toEqual(early);
  });

  it("keeps the hours gone by and none to come", async () => {
    const store = await emptyStore();
    await fill(store);
    const weather = someWeather({ value: (_, hour) => hour, fetchedUtcMs: START + 5.5 * HOUR_MS });
    await store.weather.save("yard", weather);
    const past = await store.weather.past("yard", 0);
    expect(past?.startUtcMs).toBe(START);
    expect([...past!.hours.tempC]).toEqual([0, 1, 2, 3, 4]);
    expect(await store.weather.pastKnownUntil("yard")).toBe(START + 5 * HOUR_MS);
    expect((await store.weather.past("yard", START + 3 * HOUR_MS))?.startUtcMs).toBe(START + 3 * HOUR_MS);
  });

  it("lets a later pull correct an hour gone by, but not make it unknown", async () => {
    const store = await emptyStore();
    await fill(store);
    await store.weather.save("yard", someWeather({ value: () => 1, fetchedUtcMs: START + 3 * HOUR_MS }));
    const later = someWeather({
      value: (name, hour) => (name === "rainMm" && hour === 1 ? Number.NaN : 2),
      fetchedUtcMs: START + 4 * HOUR_MS,
    });
    await store.weather.save("yard", later);
    const past = await store.weather.past("yard", 0);
    expect([...past!.hours.rainMm]).toEqual([2, 1, 2, 2]);
    expect([...past!.hours.tempC]).toEqual([2, 2, 2, 2]);
  });

  it("leaves a gap unknown", async () => {
    const store = await emptyStore();
    await fill(store);
    await store.weather.save("yard", someWeather({ hourCount: 2, value: () => 1 }));
    const startUtcMs = START + 4 * HOUR_MS;
    await store.weather.save("yard", someWeather({ startUtcMs, hourCount: 1, value: () => 3 }));
    expect([...(await store.weather.past("yard", 0))!.hours.windMPerS]).toEqual([
      1,
      1,
      Number.NaN,
      Number.NaN,
      3,
    ]);
  });

  it("fills a gap with what was foretold, until it is told, and keeps what each pull knew", async () => {
    const store = await emptyStore();
    await fill(store);
    const rain = async (asOfPullId?: number) => [
      ...(await store.weather.past("yard", 0, asOfPullId))!.hours.rainMm,
    ];
    const before = someWeather({ hourCount: 6, value: () => 1, fetchedUtcMs: START + 2 * HOUR_MS });
    const first = await store.weather.save("yard", before);
    const startUtcMs = START + 4 * HOUR_MS;
    const outage = someWeather({ startUtcMs, hourCount: 4, value: () => 2, fetchedUtcMs: startUtcMs });
    const second = await store.weather.save("yard", outage);
    expect(await rain()).toEqual([1, 1, 1, 1]);
    expect(await store.weather.pastKnownUntil("yard")).toBe(START + 2 * HOUR_MS);
    const back = someWeather({ hourCount: 8, value: () => 3, fetchedUtcMs: START + 6 * HOUR_MS });
    const third = await store.weather.save("yard", back);
    expect(await rain()).toEqual([3, 3, 3, 3, 3, 3]);
    expect(await rain(first)).toEqual([1, 1]);
    expect(await rain(second)).toEqual([1, 1, 1, 1]);
    expect(await rain(third)).toEqual([3, 3, 3, 3, 3, 3]);
    expect(await store.weather.pastKnownUntil("yard")).toBe(START + 6 * HOUR_MS);
  });

  it("knows from where on a forecast was coarse", async () => {
    const store = await emptyStore();
    await fill(store);
    const weather = someWeather();
    const origin = { ...weather.origin, source: "fallback" as const, coarseFromUtcMs: START + 9 * HOUR_MS };
    await store.weather.save("yard", { ...weather, origin });
    expect((await store.weather.latest("yard"))?.origin).toEqual(origin);
    expect(await store.weather.latestOrigin("yard")).toEqual(origin);
  });

  it("sets kept hours before a forecast that begins later, and leaves the forecast itself alone", async () => {
    const store = await emptyStore();
    await fill(store);
    await store.weather.save("yard", someWeather({ hourCount: 3, value: (_, hour) => 10 + hour }));
    const ahead = someWeather({
      startUtcMs: START + 2 * HOUR_MS,
      hourCount: 2,
      memberCount: 2,
      value: (_, hour) => 50 + Math.floor(hour),
    });
    const joined = withPast(ahead, await store.weather.past("yard", 0));
    expect(joined.startUtcMs).toBe(START);
    expect(joined.hourCount).toBe(4);
    expect([...joined.hours.tempC]).toEqual([10, 11, 50, 51]);
    const { NaN: unknown } = Number;
    expect([...joined.members!.tempC]).toEqual([unknown, unknown, unknown, unknown, 50, 50, 51, 51]);
    expect(joined.origin).toEqual(ahead.origin);
    expect(withPast(ahead, null)).toBe(ahead);
  });
});
