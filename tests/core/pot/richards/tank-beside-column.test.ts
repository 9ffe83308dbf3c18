import { describe, expect, it } from "vitest";
import { DAYS, MATERIALS, tankBesideColumn } from "./tank-beside-column.ts";

/**
 * The hourly tank beside the Richards column, for a bare closed cylinder that drains and then dries at 5 mm a day. What
 * the tank is held to is how far off it was measured to be; print-table.ts prints both for two depths.
 *
 * Known misses. Pumice: the column gives up nothing, for its pores lose touch and it has no vapour; the tank lets 10 mm
 * go in 8 days, as grains do in air. Shallow pots after 8 days: the column stops at the curve's residual water, the tank
 * at air-dry, so the tank goes on losing. Loam: the tank slows too late when shallow, too early when deep.
 */
const LIMITS: Readonly<Record<string, { drained: number; byDayFrac: readonly number[] }>> = {
  peat: { drained: 0.001, byDayFrac: [0.01, 0.01, 0.01, 0.01, 0.05] },
  "peat mix": { drained: 0.001, byDayFrac: [0.01, 0.01, 0.01, 0.01, 0.12] },
  "coco peat": { drained: 0.001, byDayFrac: [0.01, 0.01, 0.01, 0.01, 0.2] },
  loam: { drained: 0.001, byDayFrac: [0.01, 0.02, 0.1, 0.13, 0.1] },
  pumice: { drained: 0.006, byDayFrac: [] },
};

describe.each(MATERIALS)("a pot of $name, 15 cm deep", (material) => {
  const limit = LIMITS[material.name]!;
  const row = tankBesideColumn(material, 15);

  it("holds when drained what the column holds", () => {
    expect(Math.abs(row.drainedFrac.tank - row.drainedFrac.column)).toBeLessThan(limit.drained);
  });

  it.runIf(limit.byDayFrac.length > 0)("dries as the column dries", () => {
    expect(limit.byDayFrac).toHaveLength(DAYS.length);
    for (const [i, within] of limit.byDayFrac.entries()) {
      const { tank, column } = row.lostMm[i]!;
      expect(Math.abs(tank / column - 1), `day ${DAYS[i]}: ${tank} against ${column}`).toBeLessThan(within);
    }
  });
});

it("has a limit for every material", () => {
  expect(Object.keys(LIMITS).sort()).toEqual(MATERIALS.map(({ name }) => name).sort());
});
