import { describe, expect, it } from "vitest";
import { outlook } from "../../../core/pot/outlook.ts";
import { uncertaintyShares } from "../../../core/pot/uncertainty-shares.ts";
import { hourCounts } from "../../../core/pot/wet-base-outlook.ts";
import type { SpotForcing } from "../../../core/site/forcing.ts";
import { localDays } from "../../../core/site/local-days.ts";
import { seededRandom } from "../../../core/weather/seeded-random.ts";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { aPot, journal, PLANTED, potAfter, START } from "./build-collection.ts";
import { sunnyEt0Mm, vessel } from "./build-pot.ts";

const HOURS = 7 * 24;
const startUtcMs = START + 24 * HOUR_MS;
const now = potAfter({ hours: 24, entries: journal([[0, PLANTED]]) }).pots[0]!;
const { size } = now.cloud;
const days = localDays({ startUtcMs, hourCount: HOURS }, "UTC");

/** Members whose sun differs by a spread, with rain and cold in hours of our choice. */
function members(of: {
  spread: number;
  rainMm?: (hour: number) => number;
  tempC?: (hour: number) => number;
}): SpotForcing {
  const random = seededRandom(3);
  const sun = Array.from({ length: size }, () => Math.exp(of.spread * random.normal()));
  const column = (f: (hour: number, m: number) => number) =>
    Float64Array.from({ length: HOURS * size }, (_, i) => f(Math.floor(i / size), i % size));
  const tempC = column(of.tempC ?? (() => 22));
  return {
    spotId: "terrace",
    startUtcMs,
    hourCount: HOURS,
    memberCount: size,
    et0Mm: column((hour, m) => sunnyEt0Mm(hour) * sun[m]!),
    rainMm: column(of.rainMm ?? (() => 0)),
    tempC,
    plantTempC: tempC,
    lightMjPerM2: column(() => 1),
    gustMPerS: new Float64Array(HOURS),
  };
}

describe("an outlook", () => {
  const seen = outlook({ now, forcing: members({ spread: 0.2 }), days, refillFrac: 0.2 });

  it("tells each day's content in order and drying", () => {
    expect(seen.days.map(({ day }) => day)).toEqual(days.map(({ day }) => day));
    for (const { contentFrac } of seen.days) {
      expect(contentFrac.low).toBeLessThanOrEqual(contentFrac.mid);
      expect(contentFrac.mid).toBeLessThanOrEqual(contentFrac.high);
    }
    const middles = seen.days.map(({ contentFrac }) => contentFrac.mid);
    expect([...middles].sort((a, b) => b - a)).toEqual(middles);
  });

  it("never takes back that the refill point was reached, and agrees with the days to dry", () => {
    const reached = seen.days.map(({ reachedRefillFrac }) => reachedRefillFrac);
    expect([...reached].sort((a, b) => a - b)).toEqual(reached);
    const dayOfMiddle = seen.days.findIndex(({ reachedRefillFrac }) => reachedRefillFrac >= 0.5);
    expect(seen.daysToDry.mid).toBeGreaterThan(dayOfMiddle);
    expect(seen.daysToDry.mid).toBeLessThanOrEqual(dayOfMiddle + 1);
  });

  it("finds the coldest hour at plant level", () => {
    const cold = members({ spread: 0, tempC: (hour) => (hour === 77 ? -1 : 15) });
    const { coldest } = outlook({ now, forcing: cold, days, refillFrac: 0.2 });
    expect(coldest.utcMs).toBe(startUtcMs + 77 * HOUR_MS);
    expect(coldest.tempC).toEqual({ low: -1, mid: -1, high: -1 });
  });

  it("lays the uncertainty on the pot when the weather is sure, and the more on the weather the less it is", () => {
    const at = (spread: number) =>
      uncertaintyShares({ now, forcing: members({ spread }), days, pours: [] })[2]!;
    expect(at(0).potFrac).toBeCloseTo(1, 12);
    expect(at(0.2).weatherFrac).toBeGreaterThan(0.02);
    expect(at(0.8).weatherFrac).toBeGreaterThan(at(0.2).weatherFrac);
    expect(at(0.8).weatherFrac + at(0.8).potFrac).toBeCloseTo(1, 9);
  });
});

describe("a base without air", () => {
  const soggy = potAfter({
    hours: 24,
    pots: [aPot({ groupId: "citrus", canopyWidthCm: 8 })],
    entries: journal([
      [
        0,
        {
          kind: "planted",
          vessel: vessel({ saucerCm: 2 }),
          mixId: "peaty",
          roots: "undisturbed",
          mixWet: "watered-in",
        },
      ],
    ]),
  }).pots[0]!;
  const days3 = days.slice(0, 3);
  const wet = (tempC: number) =>
    outlook({
      now: soggy,
      forcing: members({ spread: 0.1, rainMm: () => 1, tempC: () => tempC }),
      days: days3,
      refillFrac: 0.5,
    }).wetBase;

  it("passes both marks in three days of warm rain", () => {
    const warm = wet(24);
    // The first hour's rain finds room in some particles.
    expect(warm.hours).toBeGreaterThan(70);
    expect(warm.countedHours).toBeCloseTo(warm.hours, 9);
    expect(warm.pastCautionFrac).toBeCloseTo(1, 9);
    expect(warm.pastHighFrac).toBeCloseTo(1, 9);
  });

  it("passes only the first in three days of cool rain", () => {
    const cool = wet(15);
    expect(cool.countedHours).toBeCloseTo(cool.hours / 2, 9);
    expect(cool.pastCautionFrac).toBeCloseTo(1, 9);
    expect(cool.pastHighFrac).toBe(0);
  });

  it("counts the hours of cold roots at rest in full", () => {
    expect(hourCounts(8, 1)).toBe(1);
    expect(hourCounts(8, 0)).toBe(0.5);
    expect(hourCounts(15, 1)).toBe(0.5);
    expect(hourCounts(25, 0)).toBe(1);
  });
});
