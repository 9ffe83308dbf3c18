import { describe, expect, it } from "vitest";
import { type LeafReport, restNow } from "../../../core/plant/rest.ts";
import { NO_WARMTH, type Warmth, warmthAfter } from "../../../core/plant/warmth.ts";
import { groupValues } from "../pot/build-pot.ts";

const JULY = Date.UTC(2026, 6, 15);
const JANUARY = Date.UTC(2026, 0, 15);

function warmth(nightC: number, meanC = nightC + 5): Warmth {
  return { ...NO_WARMTH, nightsC: [nightC, nightC, nightC], meanC };
}

function rest(of: {
  group: string;
  nightC: number;
  meanC?: number;
  utcMs?: number;
  latDeg?: number;
  leaf?: LeafReport;
}) {
  return restNow({
    values: groupValues(of.group),
    warmth: warmth(of.nightC, of.meanC),
    latDeg: of.latDeg ?? 43,
    utcMs: of.utcMs ?? JULY,
    leaf: of.leaf ?? null,
  });
}

describe("rest", () => {
  it("follows the nights, from where water is cut to where it stops", () => {
    const shares = [18, 15.6, 14, 12, 10, 5].map(
      (nightC) => rest({ group: "desert-rose", nightC }).restingShareFrac,
    );
    expect(shares[0]).toBe(0);
    expect(shares[1]).toBe(0);
    expect(shares[4]).toBe(1);
    expect(shares[5]).toBe(1);
    expect([...shares].sort((a, b) => a - b)).toEqual(shares);
  });

  it("does not come to a kind without a fixed rest that is kept warm in winter", () => {
    expect(rest({ group: "desert-rose", nightC: 18, utcMs: JANUARY })).toEqual({
      restingShareFrac: 0,
      why: "warm-growth",
    });
  });

  it("comes to a kind with a fixed rest in the winter of its hemisphere, however warm", () => {
    const at = (utcMs: number, latDeg: number) =>
      rest({ group: "desert-rose-resting", nightC: 18, utcMs, latDeg });
    expect(at(JANUARY, 43)).toEqual({ restingShareFrac: 1, why: "fixed-rest" });
    expect(at(JULY, 43).restingShareFrac).toBe(0);
    expect(at(JULY, -34)).toEqual({ restingShareFrac: 1, why: "fixed-rest" });
    expect(at(JANUARY, -34).restingShareFrac).toBe(0);
  });

  it("comes to winter growers in the heat and not in the cool", () => {
    expect(rest({ group: "pachypodium-winter", nightC: 22, meanC: 29 }).why).toBe("summer-rest");
    expect(
      rest({ group: "pachypodium-winter", nightC: 11, meanC: 16, utcMs: JANUARY }).restingShareFrac,
    ).toBe(0);
  });

  it("believes a fresh report of a leafless plant, where leafless means rest", () => {
    const leaf = { state: "leafless", ageDays: 5 } as const;
    expect(rest({ group: "plumeria-deciduous", nightC: 18, leaf })).toEqual({
      restingShareFrac: 1,
      why: "reported-leafless",
    });
    expect(rest({ group: "plumeria-evergreen", nightC: 18, leaf }).restingShareFrac).toBe(0);
  });

  it("believes a report of new growth in cool nights, less as it ages", () => {
    const share = (ageDays: number) =>
      rest({ group: "desert-rose", nightC: 10, leaf: { state: "new-growth", ageDays } }).restingShareFrac;
    expect(share(3)).toBeCloseTo(0.1, 9);
    expect(share(45)).toBeGreaterThan(share(3));
    expect(share(60)).toBe(1);
  });

  it("says so when no night is known", () => {
    const values = groupValues("agave");
    const unknown = restNow({ values, warmth: NO_WARMTH, latDeg: 43, utcMs: JULY, leaf: null });
    expect(unknown).toEqual({ restingShareFrac: 0, why: "weather-unknown" });
  });
});

describe("warmth", () => {
  it("keeps the minima of the last three whole days", () => {
    let kept = NO_WARMTH;
    for (let day = 0; day < 5; day++) {
      const tempC = Float64Array.from({ length: 24 }, (_, hour) => 10 + day + (hour === 4 ? -6 : 2));
      kept = warmthAfter(kept, { startUtcMs: JULY + day * 86_400_000, tempC });
    }
    expect(kept.nightsC).toEqual([5, 6, 7]);
  });

  it("comes to the same when a day is told in parts", () => {
    const tempC = Float64Array.from({ length: 24 }, (_, hour) => Math.sin(hour) * 7 + 12.3);
    const whole = warmthAfter(NO_WARMTH, { startUtcMs: JULY, tempC });
    const parts = [0, 5, 17].reduce(
      (so, from, i, all) =>
        warmthAfter(so, {
          startUtcMs: JULY + from * 3_600_000,
          tempC: tempC.subarray(from, all[i + 1] ?? 24),
        }),
      NO_WARMTH,
    );
    expect(parts).toEqual(whole);
  });
});
