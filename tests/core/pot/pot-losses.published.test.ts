import { describe, expect, it } from "vitest";
import { runHours } from "../../../core/pot/balance/run-hours.ts";
import type { TankPlan } from "../../../core/pot/balance/tank-of.ts";
import { drawParticles } from "../../../core/pot/learn/draw-particles.ts";
import {
  countedTank,
  forcing,
  GRITTY,
  groupValues,
  inVesselOf,
  PEATY,
  sunnyEt0Mm,
  tankPlan,
  vessel,
} from "./build-pot.ts";

/** Losses of the middle of the cloud over some days from full, watered daily or never, mL by day. */
function lossesMl(plan: TankPlan, of: { days: number; et0MmPerDay: number; watered: boolean }) {
  const particles = drawParticles({ size: 1, seed: 1, inVessel: plan.inVessel, plantMassKg: 0 });
  const tank = countedTank(plan, particles);
  const weather = forcing({
    hourCount: of.days * 24,
    et0Mm: (hour) => (sunnyEt0Mm(hour) * of.et0MmPerDay) / 5,
  });
  const byDay: { surface: number; plant: number; all: number }[] = [];
  for (let day = 0; day < of.days; day++) {
    const before = { surface: tank.account.evaporatedMl[0]!, plant: tank.account.transpiredMl[0]! };
    const run = { forcing: weather, fromHour: day * 24, toHour: day * 24 + 24 };
    runHours(tank, { ...run, pourMl: of.watered ? Number.POSITIVE_INFINITY : 0 }, null);
    const surface = tank.account.evaporatedMl[0]! - before.surface;
    const plant = tank.account.transpiredMl[0]! - before.plant;
    byDay.push({ surface, plant, all: surface + plant });
  }
  return byDay;
}

/**
 * BEESON2010, abstract: Viburnum odoratissimum in 11.4 L pots (rim 0.0508 m2), Florida, watered daily: bare-substrate
 * evaporation about 160 mL a day, mostly under 600 mL a day in all, 1.3 L a day at market size. Status: read-in-source
 * (abstract); the weather and the canopies are not given there: 4.5 mm a day and 15, 40 and 60 cm are our guesses, so
 * only the order of magnitude is held.
 */
const VIBURNUM = [
  { stage: "young, surface alone", canopyWidthCm: 15, part: "surface", printedMl: 160 },
  { stage: "half grown, in all", canopyWidthCm: 40, part: "all", printedMl: 600 },
  { stage: "market size, in all", canopyWidthCm: 60, part: "all", printedMl: 1300 },
] as const;

describe("a shrub in an 11.4 L pot against BEESON2010", () => {
  it("has three stages", () => expect(VIBURNUM).toHaveLength(3));

  it.each(VIBURNUM)("$stage", ({ canopyWidthCm, part, printedMl }) => {
    const of = vessel({ topCm: 25.4, baseCm: 22, heightCm: 26 });
    const plan = tankPlan({ vessel: of, mix: PEATY, values: groupValues("other-leafy"), canopyWidthCm });
    const day = lossesMl(plan, { days: 3, et0MmPerDay: 4.5, watered: true })[2]![part];
    // Measured: 199 for 160, 555 for 600, 1122 for 1300.
    expect(day / printedMl).toBeGreaterThan(1 / 1.5);
    expect(day / printedMl).toBeLessThan(1.5);
  });
});

/**
 * POE2012: green roof trays of nine builds in a climate chamber lost over 3 mm a day wet and under 0.5 mm a day at the
 * end in summer, 1.5 to 2.5 and under 1.0 in spring. Status: read-in-source (abstract). Length of the drying (28 days)
 * and depth of the tray (8 cm) from memory; the demand (4.5 and 2.2 mm a day) is our guess.
 */
const ENVELOPE = [
  { season: "summer", et0MmPerDay: 4.5, wet: [3, 6], end: 0.5 },
  { season: "spring", et0MmPerDay: 2.2, wet: [1.5, 2.5], end: 1 },
] as const;

describe("a planted tray against the envelope of POE2012", () => {
  it.each(ENVELOPE)("$season", ({ et0MmPerDay, wet, end }) => {
    const of = vessel({ shape: "square", topCm: 60, baseCm: 60, heightCm: 8 });
    const plan = tankPlan({
      vessel: of,
      inVessel: inVesselOf(GRITTY, of),
      values: groupValues("other-succulent"),
      canopyWidthCm: 67.7,
    });
    const days = lossesMl(plan, { days: 28, et0MmPerDay, watered: false }).map((day) => day.all / 360);
    expect(days[0]).toBeGreaterThan(wet[0]);
    expect(days[0]).toBeLessThan(wet[1]);
    expect(days[27]).toBeLessThan(end);
  });
});

/**
 * Wet and shallow plantings of succulents lose mostly by evaporation, not through the plant. FAO56 table 12, pineapple:
 * most of the coefficient is soil evaporation. Status: read-in-source.
 */
describe("a wet succulent", () => {
  it("loses more from its surface than through itself", () => {
    const plan = tankPlan({ values: groupValues("agave"), canopyWidthCm: 15 });
    const [first] = lossesMl(plan, { days: 1, et0MmPerDay: 5, watered: false });
    expect(first!.surface).toBeGreaterThan(first!.plant);
  });
});
