import { blendAt, type Portion } from "./blend.ts";
import type { Component, Ranged } from "./component.ts";
import { type Retention, waterFracAt } from "./retention.ts";
import { TEST_SPREAD_FRAC } from "./test-spread.ts";
import type { WorkedMix } from "./worked-mix.ts";

/** A mix as the trade describes it, each figure with the ends that its components' ranges leave open. */
export interface MixFigures {
  readonly totalPorosityFrac: Ranged;
  /** Water at 1, 5 and 10 kPa. [EN13041: heads of 10, 50 and 100 cm] */
  readonly waterAt10cmFrac: Ranged;
  readonly waterAt50cmFrac: Ranged;
  readonly waterAt100cmFrac: Ranged;
  /** Air at 1 kPa. [DEBOODT1972] */
  readonly airAt10cmFrac: Ranged;
  /** Water between 1 and 5 kPa. [DEBOODT1972] */
  readonly easilyAvailableFrac: Ranged;
  /** Water between 5 and 10 kPa. [DEBOODT1972] */
  readonly bufferFrac: Ranged;
  readonly dryDensityKgPerL: Ranged;
  /** After draining at 1 kPa. */
  readonly wetDensityKgPerL: Ranged;
  readonly shrinkFrac: Ranged;
}

/** Spread of a density that was weighed, relative. Chosen by us: a kitchen scale and a heaped measure. */
const WEIGHED_SPREAD = 0.03;

/**
 * How far the shape of a curve may be off, relative, on top of its level. Chosen by us because the shapes of the grains
 * are assumed and only their level is measured.
 */
const SHAPE_SPREAD = 0.3;

/** Shrinkage may be half as much or half as much again. Chosen by us: measured totals of mixes scatter so. */
const SHRINK_SPREAD = 0.5;

/**
 * Figures of a mix with their ranges. Components come from different bags, so their errors are taken as independent
 * and added as squares; every range holds its central value.
 */
export function mixFigures(worked: WorkedMix): MixFigures {
  const shrink = shrinkRange(worked.shrinkFrac);
  const spread = (figure: Figure) => spreadOf({ worked, shrink, figure });
  const waterAt10cmFrac = spread(waterAt("waterAt10cmFrac", 10));
  const waterAt50cmFrac = spread(waterAt("waterAt50cmFrac", 50));
  const waterAt100cmFrac = spread(waterAt("waterAt100cmFrac", 100));
  const totalPorosityFrac = spread(POROSITY);
  const dryDensityKgPerL = spread(DENSITY);
  return {
    totalPorosityFrac,
    waterAt10cmFrac,
    waterAt50cmFrac,
    waterAt100cmFrac,
    airAt10cmFrac: differenceOf(totalPorosityFrac, waterAt10cmFrac),
    easilyAvailableFrac: drainedBetween(waterAt10cmFrac, waterAt50cmFrac),
    bufferFrac: drainedBetween(waterAt50cmFrac, waterAt100cmFrac),
    dryDensityKgPerL,
    wetDensityKgPerL: sumOfRanges(dryDensityKgPerL, waterAt10cmFrac),
    shrinkFrac: shrink,
  };
}

/** One figure: how it follows from the mix, what each component leaves open, and where it must stay. */
interface Figure {
  readonly of: (mix: { retention: Retention; dryDensityKgPerL: number }) => number;
  readonly range: (component: Component) => Ranged;
  readonly testedSpread: (mid: number) => number;
  readonly most: number;
}

const POROSITY: Figure = {
  of: ({ retention }) => retention.totalPorosityFrac,
  range: (component) => component.totalPorosityFrac,
  testedSpread: () => TEST_SPREAD_FRAC,
  most: 1,
};

const DENSITY: Figure = {
  of: ({ dryDensityKgPerL }) => dryDensityKgPerL,
  range: (component) => component.dryDensityKgPerL,
  testedSpread: (mid) => mid * WEIGHED_SPREAD,
  most: Number.POSITIVE_INFINITY,
};

function waterAt(
  name: "waterAt10cmFrac" | "waterAt50cmFrac" | "waterAt100cmFrac",
  suctionCm: number,
): Figure {
  return {
    of: ({ retention }) => waterFracAt(retention, suctionCm),
    range: (component) => component[name],
    testedSpread: () => TEST_SPREAD_FRAC,
    most: 1,
  };
}

function shrinkRange(mid: number): Ranged {
  return { low: mid * (1 - SHRINK_SPREAD), mid, high: mid * (1 + SHRINK_SPREAD) };
}

function spreadOf(of: { worked: WorkedMix; shrink: Ranged; figure: Figure }): Ranged {
  const { worked, shrink, figure } = of;
  const mid = figure.of(worked);
  const { down, up } = worked.libraryOnly
    ? libraryDeviations({ portions: worked.portions, shrink, figure })
    : { down: figure.testedSpread(mid), up: figure.testedSpread(mid) };
  return { low: Math.max(0, mid - down), mid, high: Math.max(mid, Math.min(figure.most, mid + up)) };
}

function libraryDeviations(of: { portions: readonly Portion[]; shrink: Ranged; figure: Figure }): {
  down: number;
  up: number;
} {
  const { portions, shrink, figure } = of;
  let downSquare = 0;
  let upSquare = 0;
  for (const { component, shareFrac } of portions) {
    const { low, mid, high } = figure.range(component);
    downSquare += ((shareFrac * (mid - low)) / (1 - shrink.mid)) ** 2;
    upSquare += ((shareFrac * (high - mid)) / (1 - shrink.mid)) ** 2;
  }
  for (const end of [shrink.low, shrink.high]) {
    const moved = figure.of(blendAt(portions, end)) - figure.of(blendAt(portions, shrink.mid));
    if (moved < 0) downSquare += moved ** 2;
    else upSquare += moved ** 2;
  }
  return { down: Math.sqrt(downSquare), up: Math.sqrt(upSquare) };
}

/** What drains between two suctions: levels move together, so like ends belong together; the shape adds its own. */
function drainedBetween(wetter: Ranged, drier: Ranged): Ranged {
  const mid = wetter.mid - drier.mid;
  const ends = [wetter.low - drier.low, mid, wetter.high - drier.high];
  return {
    low: Math.max(0, Math.min(...ends) * (1 - SHAPE_SPREAD)),
    mid,
    high: Math.max(...ends) * (1 + SHAPE_SPREAD),
  };
}

function differenceOf(whole: Ranged, part: Ranged): Ranged {
  const mid = whole.mid - part.mid;
  const down = Math.hypot(whole.mid - whole.low, part.high - part.mid);
  const up = Math.hypot(whole.high - whole.mid, part.mid - part.low);
  return { low: Math.max(0, mid - down), mid, high: Math.min(1, mid + up) };
}

function sumOfRanges(a: Ranged, b: Ranged): Ranged {
  const mid = a.mid + b.mid;
  return {
    low: mid - Math.hypot(a.mid - a.low, b.mid - b.low),
    mid,
    high: mid + Math.hypot(a.high - a.mid, b.high - b.mid),
  };
}
