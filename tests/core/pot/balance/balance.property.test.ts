import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { runHours } from "../../../../core/pot/balance/run-hours.ts";
import { contentMl, type Tank } from "../../../../core/pot/balance/tank.ts";
import type { Vessel } from "../../../../core/pot/vessel.ts";
import { drawnTank, forcing, GRITTY, groupValues, PEATY, tankPlan, vessel } from "../build-pot.ts";

const HOURS = 240;
/** Rounding of sums of some thousand terms of some litres. */
const ROUNDING_ML = 1e-7;

const anyVessel: fc.Arbitrary<Vessel> = fc
  .record({
    topCm: fc.double({ min: 6, max: 45, noNaN: true }),
    taper: fc.double({ min: 0.6, max: 1, noNaN: true }),
    slim: fc.double({ min: 0.5, max: 1.6, noNaN: true }),
    material: fc.constantFrom("plastic", "unglazed", "fabric", "glazed") as fc.Arbitrary<Vessel["material"]>,
    saucerCm: fc.constantFrom(0, 0, 1.5),
    topDressingCm: fc.constantFrom(0, 0, 1, 2),
  })
  .map(({ topCm, taper, slim, material, saucerCm, topDressingCm }) =>
    vessel({
      topCm,
      baseCm: topCm * taper,
      heightCm: Math.max(6, topCm * slim),
      material,
      ...(saucerCm > 0 ? { saucerCm } : {}),
      ...(topDressingCm > 0 ? { topDressingCm } : {}),
    }),
  );

const anyPot = fc
  .record({
    vessel: anyVessel,
    mix: fc.constantFrom(GRITTY, PEATY),
    group: fc.constantFrom("desert-rose", "citrus", "cactus-desert", "hibiscus"),
    canopyWidthCm: fc.double({ min: 3, max: 90, noNaN: true }),
    restingShareFrac: fc.double({ min: 0, max: 1, noNaN: true }),
    seed: fc.integer({ min: 1, max: 1e6 }),
  })
  .map(({ group, seed, ...plan }) => ({ plan: tankPlan({ ...plan, values: groupValues(group) }), seed }));

const rainMm = fc.oneof(
  { arbitrary: fc.constant(0), weight: 12 },
  { arbitrary: fc.double({ min: 0, max: 3, noNaN: true }), weight: 2 },
  { arbitrary: fc.double({ min: 0, max: 60, noNaN: true }), weight: 1 },
);
const et0Mm = fc.double({ min: 0, max: 1.2, noNaN: true });
const anyWeather = fc.record({
  rainMm: fc.array(rainMm, { minLength: HOURS, maxLength: HOURS }),
  et0Mm: fc.array(et0Mm, { minLength: HOURS, maxLength: HOURS }),
});
type Hours = { rainMm: number[]; et0Mm: number[] };

/** Runs a tank hour by hour with a look after each. */
function course(
  tank: Tank,
  hours: Hours,
  pours: ReadonlyMap<number, number>,
  look: (hour: number) => void,
): void {
  const weather = forcing({
    hourCount: HOURS,
    rainMm: (hour) => hours.rainMm[hour]!,
    et0Mm: (hour) => hours.et0Mm[hour]!,
  });
  for (let hour = 0; hour < HOURS; hour++) {
    const run = { forcing: weather, fromHour: hour, toHour: hour + 1, pourMl: pours.get(hour) ?? 0 };
    runHours(tank, run, null);
    look(hour);
  }
}

function heldMl(tank: Tank, particle: number): number {
  return contentMl(tank, particle) + tank.saucerMl[particle]!;
}

describe("the hourly balance", () => {
  it("accounts for every drop: water in is water out and change", () => {
    fc.assert(
      fc.property(
        anyPot,
        anyWeather,
        fc.double({ min: 0, max: 3000, noNaN: true }),
        ({ plan, seed }, hours, pourMl) => {
          const tank = drawnTank(plan, { seed });
          const before = Array.from({ length: tank.size }, (_, k) => heldMl(tank, k));
          course(tank, hours, new Map([[50, pourMl]]), () => undefined);
          for (let k = 0; k < tank.size; k++) {
            const out =
              tank.account.drainedMl[k]! +
              tank.account.evaporatedMl[k]! +
              tank.account.wallLossMl[k]! +
              tank.account.transpiredMl[k]!;
            const change = heldMl(tank, k) - before[k]!;
            const scale = 1 + tank.account.enteredMl[k]! / 1000;
            expect(Math.abs(tank.account.enteredMl[k]! - out - change)).toBeLessThan(ROUNDING_ML * scale);
          }
        },
      ),
      { numRuns: 60 },
    );
  });

  it("keeps every store within its bounds", () => {
    fc.assert(
      fc.property(anyPot, anyWeather, ({ plan, seed }, hours) => {
        const tank = drawnTank(plan, { seed });
        let worstMl = 0;
        const within = (ml: number, mostMl: number) => {
          worstMl = Math.max(worstMl, -ml, ml - mostMl);
        };
        course(tank, hours, new Map(), () => {
          for (let k = 0; k < tank.size; k++) {
            within(tank.surfaceMl[k]!, tank.surfaceMostMl[k]!);
            within(tank.bodyMl[k]!, tank.bodyMostMl[k]!);
            within(tank.saucerMl[k]!, tank.saucerMostMl);
            within(contentMl(tank, k), tank.capacityMl[k]!);
          }
        });
        expect(worstMl).toBeLessThan(ROUNDING_ML);
      }),
      { numRuns: 60 },
    );
  });

  it("never dries a pot by more rain, then or later", () => {
    const extra = fc.array(rainMm, { minLength: HOURS, maxLength: HOURS });
    fc.assert(
      fc.property(anyPot, anyWeather, extra, (pot, hours, more) => {
        const wetter = { ...hours, rainMm: hours.rainMm.map((mm, hour) => mm + more[hour]!) };
        expectNeverDrier(pot, { hours: wetter }, { hours });
      }),
      { numRuns: 60 },
    );
  });

  it("never wets a pot by more sun, then or later", () => {
    const share = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), {
      minLength: HOURS,
      maxLength: HOURS,
    });
    fc.assert(
      fc.property(anyPot, anyWeather, share, (pot, hours, less) => {
        const duller = { ...hours, et0Mm: hours.et0Mm.map((mm, hour) => mm * less[hour]!) };
        expectNeverDrier(pot, { hours: duller }, { hours });
      }),
      { numRuns: 60 },
    );
  });

  it("never lowers the content by a watering, then or later", () => {
    const pour = fc.tuple(fc.integer({ min: 0, max: HOURS - 1 }), fc.constantFrom(50, 400, 3000, Infinity));
    fc.assert(
      fc.property(anyPot, anyWeather, pour, (pot, hours, [hour, ml]) => {
        expectNeverDrier(pot, { hours, pours: new Map([[hour, ml]]) }, { hours });
      }),
      { numRuns: 60 },
    );
  });
});

interface Course {
  readonly hours: Hours;
  readonly pours?: ReadonlyMap<number, number>;
}

function expectNeverDrier(
  { plan, seed }: { plan: ReturnType<typeof tankPlan>; seed: number },
  wetter: Course,
  drier: Course,
): void {
  const contents: number[] = [];
  const wet = drawnTank(plan, { seed });
  course(wet, wetter.hours, wetter.pours ?? new Map(), () => {
    for (let k = 0; k < wet.size; k++) contents.push(contentMl(wet, k));
  });
  const dry = drawnTank(plan, { seed });
  let i = 0;
  let worstMl = 0;
  course(dry, drier.hours, drier.pours ?? new Map(), () => {
    for (let k = 0; k < dry.size; k++) {
      worstMl = Math.min(worstMl, contents[i++]! - contentMl(dry, k));
    }
  });
  expect(worstMl).toBeGreaterThanOrEqual(-ROUNDING_ML);
}
