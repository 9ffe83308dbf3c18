import { waterMlAtRest } from "../pot/hold-water.ts";
import type { Vessel } from "../pot/vessel.ts";
import { mixDepthCm, volumeMlBetween } from "../pot/vessel-shape.ts";
import { findRoot } from "./find-root.ts";
import type { PorosityTest } from "./mix.ts";
import { porosityOf } from "./porosity-test.ts";
import type { Retention } from "./retention.ts";

/** Powers between which every test lies that leaves some water and some air. */
const MILDEST = 0.01;
const STRONGEST = 10_000;

/** A millionth of the pot: far below what anyone can measure. */
const CLOSE_FRAC = 1e-6;

/**
 * The library's curve bent so that the grower's test comes out as measured: pores as measured, and the saturation at
 * every suction raised to the one power that makes the test pot hold what it held.
 */
export function fitToTest(library: Retention, test: PorosityTest): Retention {
  const measured = porosityOf(test);
  const vessel = testPot(test.potMl);
  const { totalPorosityFrac: saturatedFrac } = measured;
  const logPower = findRoot(
    (log) =>
      capacityFrac(bentBy(library, { power: Math.exp(log), saturatedFrac }), vessel) - measured.capacityFrac,
    { low: Math.log(MILDEST), high: Math.log(STRONGEST), tolerance: CLOSE_FRAC },
  );
  return bentBy(library, { power: Math.exp(logPower), saturatedFrac });
}

function bentBy(library: Retention, by: { power: number; saturatedFrac: number }): Retention {
  const fromSaturatedFrac = library.terms.reduce(
    (sum, term) => sum + term.shareFrac * term.curve.saturatedFrac,
    0,
  );
  return {
    ...library,
    totalPorosityFrac: by.saturatedFrac,
    saturatedFrac: by.saturatedFrac,
    unusableFrac: by.saturatedFrac * (library.unusableFrac / fromSaturatedFrac) ** by.power,
    bent: { fromSaturatedFrac, power: by.power },
  };
}

function capacityFrac(retention: Retention, vessel: Vessel): number {
  const volumeMl = volumeMlBetween(vessel, { fromCm: 0, toCm: mixDepthCm(vessel) });
  return waterMlAtRest({ retention, vessel, suctionAtBaseCm: 0 }) / volumeMl;
}

/** The test names only the volume; the pot is taken as tall as wide, as test cylinders and common pots are. */
function testPot(potMl: number): Vessel {
  const widthCm = Math.cbrt((4 * potMl) / Math.PI);
  return { shape: "round", topCm: widthCm, baseCm: widthCm, heightCm: widthCm, material: "plastic" };
}
