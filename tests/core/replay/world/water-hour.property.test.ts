import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { firstState } from "../../../../core/replay/season/first-state.ts";
import { type HourOfWater, runThroughMl, waterHour } from "../../../../core/replay/world/water-hour.ts";
import { copyState } from "../../../../core/replay/world/world-state.ts";
import { springWorld } from "../some-world.ts";

const GROUPS = ["desert-rose", "citrus", "pelargonium"];
const season = springWorld({ groupIds: GROUPS, days: 40 }).seasonOf(2013);

const hour = fc.record({
  et0Mm: fc.double({ min: 0, max: 0.9, noNaN: true }),
  rainMm: fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, fc.double({ min: 0, max: 25, noNaN: true })),
  pourMl: fc.oneof({ weight: 5, arbitrary: fc.constant(0) }, fc.double({ min: 0, max: 6000, noNaN: true })),
});
const course = fc.record({
  pot: fc.constantFrom(...season.pots),
  hours: fc.array(hour, { minLength: 1, maxLength: 200 }),
  left: fc.double({ min: 0, max: 1, noNaN: true }),
});

const into = (): HourOfWater => ({ wettedMl: 0, drainedMl: 0, wetBase: false });

describe("water of a pot of the world", () => {
  it("is neither made nor lost where nothing evaporates", () => {
    fc.assert(
      fc.property(course, ({ pot, hours, left }) => {
        const state = firstState(season, pot);
        state.upperMl = left * pot.upperFullMl;
        let booked = state.upperMl + state.lowerMl;
        for (const one of hours) {
          const done = into();
          waterHour(pot, state, { ...one, et0Mm: 0, into: done });
          booked += done.wettedMl - done.drainedMl;
          expect(state.upperMl + state.lowerMl).toBeCloseTo(booked, 6);
        }
      }),
      { numRuns: 60 },
    );
  });

  it("stays between nothing and soaked", () => {
    fc.assert(
      fc.property(course, ({ pot, hours }) => {
        const state = firstState(season, pot);
        for (const one of hours) {
          waterHour(pot, state, { ...one, into: into() });
          expect(state.upperMl).toBeGreaterThanOrEqual(-1e-9);
          expect(state.lowerMl).toBeGreaterThanOrEqual(-1e-9);
          expect(state.upperMl + state.lowerMl).toBeLessThanOrEqual(
            pot.upperSoakedMl + pot.lowerSoakedMl + 1e-6,
          );
        }
      }),
      { numRuns: 60 },
    );
  });

  it("fills the pot when poured until it runs through, and runs out by an eighth or so", () => {
    fc.assert(
      fc.property(course, ({ pot, left }) => {
        const state = firstState(season, pot);
        state.upperMl = left * pot.upperFullMl;
        state.lowerMl = left * pot.lowerFullMl;
        const pourMl = runThroughMl(pot, state);
        const missing = (1 - left) * pot.capacityMl;
        expect(pourMl).toBeGreaterThanOrEqual(missing);
        const dry = copyState(state);
        waterHour(pot, dry, { et0Mm: 0, rainMm: 0, pourMl, into: into() });
        for (let h = 0; h < 24; h++) waterHour(pot, dry, { et0Mm: 0, rainMm: 0, pourMl: 0, into: into() });
        expect((dry.upperMl + dry.lowerMl) / pot.capacityMl).toBeGreaterThan(0.97);
      }),
      { numRuns: 40 },
    );
  });
});
