import { describe, expect, it } from "vitest";
import { tankOf } from "../../../../core/pot/balance/tank-of.ts";
import { assimilate, surpriseSd } from "../../../../core/pot/learn/assimilate.ts";
import { drawParticles } from "../../../../core/pot/learn/draw-particles.ts";
import { drift } from "../../../../core/pot/learn/drift.ts";
import { normalQuantile } from "../../../../core/pot/learn/normal-quantile.ts";
import { reweigh } from "../../../../core/pot/learn/reweigh.ts";
import { copyParticles } from "../../../../core/pot/particles.ts";
import { tankPlan } from "../build-pot.ts";

const plan = tankPlan();
const drawn = () => drawParticles({ size: 51, seed: 4, inVessel: plan.inVessel, plantMassKg: 0.5 });
const mean = (column: Float64Array) => column.reduce((sum, value) => sum + value, 0) / column.length;
const sd = (column: Float64Array) => {
  const middle = mean(column);
  return Math.sqrt(column.reduce((sum, value) => sum + (value - middle) ** 2, 0) / column.length);
};

/** WICHURA1988 tables his function at 0.25, 0.001 and 1e-20; the others are standard tables of the normal. */
const QUANTILES = [
  [0.5, 0],
  [0.25, -0.6744897501960817],
  [0.001, -3.090232306167814],
  [1e-20, -9.26234009],
  [0.975, 1.959963984540054],
  [0.9, 1.2815515655446004],
] as const;

describe("the normal quantile", () => {
  it.each(QUANTILES)("at %d", (share, expected) => {
    expect(Math.abs(normalQuantile(share) - expected)).toBeLessThan(2e-6);
  });
  it("refuses the ends", () => {
    expect(() => normalQuantile(0)).toThrow(RangeError);
    expect(() => normalQuantile(1)).toThrow(RangeError);
  });
});

describe("a measurement", () => {
  // For one normal quantity measured directly, the exact answer is the product of two normal densities.
  it("moves mean and spread as two normal densities multiply", () => {
    const particles = drawn();
    const before = { mean: mean(particles.tareKg), sd: sd(particles.tareKg) };
    const noise = 0.07;
    const seen = before.mean + 0.2;
    assimilate(particles, tankOf(plan, particles), { seen, sd: noise, foretold: particles.tareKg.slice() });
    const precision = 1 / before.sd ** 2 + 1 / noise ** 2;
    const exact = (before.mean / before.sd ** 2 + seen / noise ** 2) / precision;
    expect(mean(particles.tareKg)).toBeCloseTo(exact, 9);
    expect(sd(particles.tareKg)).toBeCloseTo(Math.sqrt(1 / precision), 9);
  });

  it("leaves alone what has nothing to do with it", () => {
    const particles = drawn();
    const before = copyParticles(particles);
    assimilate(particles, tankOf(plan, particles), {
      seen: 3,
      sd: 0.1,
      foretold: new Float64Array(51).fill(2),
    });
    expect(particles).toEqual(before);
  });

  it("keeps factors and stores within their bounds however wild it is", () => {
    const particles = drawn();
    for (let k = 0; k < 51; k++) particles.bodyMl[k] = 10 * k;
    assimilate(particles, tankOf(plan, particles), { seen: 1e6, sd: 1, foretold: particles.bodyMl.slice() });
    const tank = tankOf(plan, particles);
    for (let k = 0; k < 51; k++) {
      expect(particles.capacityFactor[k]!).toBeGreaterThanOrEqual(0.4);
      expect(particles.capacityFactor[k]!).toBeLessThanOrEqual(2);
      expect(particles.bodyMl[k]!).toBeLessThanOrEqual(tank.bodyMostMl[k]! * (1 + 1e-12));
      expect(particles.bodyMl[k]!).toBeGreaterThanOrEqual(0);
    }
  });

  it("surprises by its distance in the spread of cloud and scale together", () => {
    const foretold = Float64Array.of(1, 2, 3);
    const weightFrac = new Float64Array(3).fill(1 / 3);
    expect(surpriseSd(weightFrac, { seen: 5, sd: 1, foretold })).toBeCloseTo(3 / Math.sqrt(2 / 3 + 1), 12);
  });
});

describe("a likelihood", () => {
  it("re-weights while many still count", () => {
    const particles = drawn();
    const likelihood = new Float64Array(51).map((_, k) => (k < 40 ? 1 : 0.5));
    reweigh(particles, { likelihood, seed: 1 });
    expect(particles.weightFrac[0]! / particles.weightFrac[50]!).toBeCloseTo(2, 9);
    expect(particles.weightFrac.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 12);
  });

  it("renews the cloud from those that still count, apart from each other, when few do", () => {
    const particles = drawn();
    const kept = particles.thirstFactor[7]!;
    const likelihood = new Float64Array(51).map((_, k) => (k === 7 ? 1 : 1e-9));
    reweigh(particles, { likelihood, seed: 1 });
    expect([...particles.weightFrac]).toEqual(new Array(51).fill(1 / 51));
    expect(new Set(particles.thirstFactor).size).toBeGreaterThan(40);
    expect(Math.abs(Math.log(mean(particles.thirstFactor) / kept))).toBeLessThan(0.5);
  });

  it("changes nothing when no particle explains it, and tells", () => {
    const particles = drawn();
    const before = copyParticles(particles);
    expect(reweigh(particles, { likelihood: new Float64Array(51), seed: 1 })).toBe(0);
    expect(particles).toEqual(before);
  });
});

describe("fading", () => {
  const spreads = {
    capacityFactor: 0.15,
    thirstFactor: 0.45,
    surfaceFactor: 0.4,
    wallFactor: 0.5,
    catchFactor: 0.25,
    tareKg: 0.3,
  };

  it("widens what was learned towards the first spread and no further", () => {
    const particles = drawn();
    for (let k = 0; k < 51; k++) particles.thirstFactor[k] = 1.5 * particles.thirstFactor[k]! ** 0.1;
    const logs = () => particles.thirstFactor.map(Math.log);
    const narrow = sd(logs());
    const middle = mean(logs());
    drift(particles, { days: 30, drawn: spreads });
    expect(sd(logs())).toBeGreaterThan(2 * narrow);
    expect(mean(logs())).toBeCloseTo(middle, 9);
    drift(particles, { days: 10_000, drawn: spreads });
    expect(sd(logs())).toBeCloseTo(0.45, 2);
  });
});
