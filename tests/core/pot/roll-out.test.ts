import { describe, expect, it } from "vitest";
import { rollOut, trajectoryFor } from "../../../core/pot/roll-out.ts";
import type { SpotForcing } from "../../../core/site/forcing.ts";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { journal, PLANTED, potAfter, START } from "./build-collection.ts";
import { forcing } from "./build-pot.ts";

const DAY = 24;
const HOURS = 10 * DAY;
const now = potAfter({ hours: DAY, entries: journal([[0, PLANTED]]) }).pots[0]!;
const startUtcMs = START + DAY * HOUR_MS;
const { size } = now.cloud;

/** The same weather for every particle, told as members. */
function asMembers(one: SpotForcing): SpotForcing {
  const spread = (column: Float64Array) =>
    Float64Array.from({ length: column.length * size }, (_, i) => column[Math.floor(i / size)]!);
  return {
    ...one,
    memberCount: size,
    et0Mm: spread(one.et0Mm),
    rainMm: spread(one.rainMm),
    tempC: spread(one.tempC),
    plantTempC: spread(one.plantTempC),
    lightMjPerM2: spread(one.lightMjPerM2),
  };
}

const sunny = forcing({ hourCount: HOURS, startUtcMs });
const dim = forcing({ hourCount: HOURS, startUtcMs, et0Mm: () => 0.01 });
const ahead = (weather: SpotForcing, pours: { hour: number; waterMl: number }[] = []) =>
  rollOut({ now, stretches: [{ fromHour: 0, forcing: weather }], pours, hourCount: HOURS });
const row = (column: ArrayLike<number>, hour: number) =>
  Array.from({ length: size }, (_, k) => column[hour * size + k]!);

describe("rolling a pot out", () => {
  it("does not care whether one course of weather is told once or for each particle", () => {
    expect(ahead(asMembers(sunny))).toEqual(ahead(sunny));
  });

  it("leaves the pot as it is now", () => {
    const before = structuredClone(now.cloud);
    ahead(sunny, [{ hour: 3, waterMl: 500 }]);
    expect(now.cloud).toEqual(before);
  });

  it("writes over a trajectory that it is given", () => {
    const into = trajectoryFor(size, HOURS);
    into.waterMl.fill(-1);
    const stretches = [{ fromHour: 0, forcing: sunny }];
    const out = rollOut({ now, stretches, pours: [], hourCount: HOURS }, into);
    expect(out).toBe(into);
    expect(out).toEqual(ahead(sunny));
  });

  it("pours in the hour that is asked for, no other", () => {
    const dry = ahead(sunny);
    const poured = ahead(sunny, [{ hour: 100, waterMl: 200 }]);
    expect(row(poured.waterMl, 99)).toEqual(row(dry.waterMl, 99));
    expect(row(poured.wettedMl, 100)).toEqual(new Array(size).fill(200));
    expect(row(poured.wettedMl, 101)).toEqual(new Array(size).fill(0));
    for (let k = 0; k < size; k++) {
      expect(poured.waterMl[100 * size + k]!).toBeGreaterThan(dry.waterMl[100 * size + k]!);
    }
  });

  it("fills every particle when it pours until it runs through, and lets some run out", () => {
    const poured = ahead(sunny, [{ hour: 200, waterMl: Number.POSITIVE_INFINITY }]);
    for (let k = 0; k < size; k++) {
      const capacityMl = now.inVessel.hold.capacityMl * now.cloud.capacityFactor[k]!;
      expect(poured.waterMl[200 * size + k]! / capacityMl).toBeGreaterThan(0.97);
      expect(poured.drainedMl[200 * size + k]!).toBeGreaterThan(0);
      expect(Number.isFinite(poured.wettedMl[200 * size + k]!)).toBe(true);
    }
  });

  it("dries more slowly from the hour in which it is carried into the dim", () => {
    const stretches = [
      { fromHour: 0, forcing: sunny },
      { fromHour: 60, forcing: dim },
    ];
    const carried = rollOut({ now, stretches, pours: [], hourCount: HOURS });
    const stayed = ahead(sunny);
    expect(row(carried.waterMl, 59)).toEqual(row(stayed.waterMl, 59));
    expect(row(carried.waterMl, 239).every((ml, k) => ml > row(stayed.waterMl, 239)[k]!)).toBe(true);
  });

  it("refuses hours that no stretch or forcing covers", () => {
    const late = [{ fromHour: 5, forcing: sunny }];
    expect(() => rollOut({ now, stretches: late, pours: [], hourCount: HOURS })).toThrow(RangeError);
    const all = [{ fromHour: 0, forcing: sunny }];
    expect(() => rollOut({ now, stretches: all, pours: [], hourCount: HOURS + 1 })).toThrow(RangeError);
    const odd = [{ fromHour: 0, forcing: { ...sunny, memberCount: 2 } }];
    expect(() => rollOut({ now, stretches: odd, pours: [], hourCount: 5 })).toThrow(RangeError);
  });
});
