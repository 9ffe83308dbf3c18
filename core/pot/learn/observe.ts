import type { Problem } from "../../problem.ts";
import { roomMl } from "../balance/take-in.ts";
import { contentMl } from "../balance/tank.ts";
import { assimilate, type Measured, surpriseSd } from "./assimilate.ts";
import { feelLikelihood } from "./feel.ts";
import { type LikelyQuestion, likelyQuestion } from "./likely-question.ts";
import type { Observed } from "./observed.ts";
import { reweigh } from "./reweigh.ts";

/** Beyond this many standard deviations an observation is doubted rather than believed. Chosen by us. */
const DOUBT_SD = 4;
/** Mean likelihood of hand feel (1 where it fits best) below which it is doubted. Chosen by us. */
const DOUBT_FEEL = 0.02;
/** Scales: a hundredth of the weight and a few grams. Chosen by us. */
const SCALE_SD = { shareFrac: 0.01, kg: 0.005 } as const;
/** A jug read by eye, and how nearly a pot that runs through is full (share of capacity). Chosen by us. */
const JUG_SD = { shareFrac: 0.03, ml: 5, fullFrac: 0.04 } as const;
/**
 * How far the balance may be off in what it says has gone, whatever the factors: its laws are not the pot's. Chosen by
 * us so that pots which dry by another law are covered by what was learned of them.
 */
const LAW_SD = 0.1;
/** Likelihood that a leafy plant is left so dry, and where it falls. Chosen by us. */
const THRIVING = { atWorst: 0.3, leftFrac: 0.03, band: 0.04 } as const;
/** Whether dry mix sheds all of what it may or none is not known. Chosen by us. */
const SHED_SD = 0.5;
/** Less than this share of what was poured is no sign that the pot is full. */
const RAN_THROUGH_FRAC = 0.02;

/** A weighing: moves the cloud, or is doubted. */
export function observeMass(on: Observed, massKg: number): Problem | null {
  const { tank, particles, inVessel } = on;
  const foretold = particles.tareKg.map(
    (tareKg, k) => inVessel.hold.dryMassKg + tareKg + contentMl(tank, k) / 1000,
  );
  const sd = Math.hypot(SCALE_SD.shareFrac * massKg + SCALE_SD.kg, (LAW_SD * missingMl(on)) / 1000);
  return believe(on, { seen: massKg, sd, foretold });
}

/**
 * What was poured and what ran out: the rest was room. Says exactly how dry the pot was, if anything ran out; if
 * nothing did, only that there was at least so much room.
 */
export function observePour(on: Observed, given: { pouredMl: number; drainedMl: number }): Problem | null {
  const { tank, inVessel } = on;
  const foretold = tank.surfaceMl.map(
    (missing, k) => missing + tank.bodyMl[k]! + tank.saucerMostMl - tank.saucerMl[k]!,
  );
  const keptMl = given.pouredMl - given.drainedMl;
  const sd = Math.hypot(
    JUG_SD.shareFrac * given.pouredMl + JUG_SD.ml,
    JUG_SD.fullFrac * inVessel.hold.capacityMl,
    SHED_SD * shedMl(on),
    LAW_SD * missingMl(on),
  );
  const measured = { seen: keptMl, sd, foretold };
  if (given.drainedMl > RAN_THROUGH_FRAC * given.pouredMl) return believe(on, measured);
  const likelihood = foretold.map((roomMl) => 1 / (1 + Math.exp((1.7 * (keptMl - roomMl)) / sd)));
  if (reweigh(on.particles, { likelihood, seed: on.seed }) > DOUBT_FEEL) return null;
  return doubt(on, measured);
}

/** What is missing, mean of the cloud, mL. */
function missingMl({ tank, particles }: Observed): number {
  let sum = 0;
  for (let k = 0; k < tank.size; k++) {
    sum += particles.weightFrac[k]! * (tank.surfaceMl[k]! + tank.bodyMl[k]!);
  }
  return sum;
}

/** What dry mix may have let past, mean of the cloud, mL. */
function shedMl({ tank, particles }: Observed): number {
  let sum = 0;
  for (let k = 0; k < tank.size; k++) {
    const room = tank.surfaceMl[k]! + tank.bodyMl[k]! + tank.saucerMostMl - tank.saucerMl[k]!;
    sum += particles.weightFrac[k]! * (room - roomMl(tank, k));
  }
  return sum;
}

/**
 * A leafy plant about to be watered of which no wilting was told: it was hardly bone dry. One-sided, for a grower may
 * water as early as he likes.
 */
export function observeThriving(on: Observed): null {
  const likelihood = leftFracs(on).map(
    (left) =>
      THRIVING.atWorst + (1 - THRIVING.atWorst) / (1 + Math.exp((THRIVING.leftFrac - left) / THRIVING.band)),
  );
  reweigh(on.particles, { likelihood, seed: on.seed });
  return null;
}

/** A finger in the mix or a pot lifted in the hand: weak, worded as likelihoods. */
export function observeFeel(
  on: Observed,
  check: { dryToCm?: number; feel?: "light" | "middling" | "heavy" },
): Problem | null {
  const leftFrac = leftFracs(on);
  const likelihood = feelLikelihood(leftFrac, { ...check, depthCm: on.depthCm });
  if (reweigh(on.particles, { likelihood, seed: on.seed }) > DOUBT_FEEL) return null;
  return doubt(on, { seen: Number.NaN, sd: Number.NaN, foretold: leftFrac }, check.feel === "heavy");
}

/** Share of usable water left, by particle; below zero where air has dried the mix further than roots can. */
function leftFracs({ inVessel, particles }: Observed): Float64Array {
  const { capacityMl, unusableMl, usableMl } = inVessel.hold;
  const { size, capacityFactor, surfaceMl, bodyMl } = particles;
  const left = new Float64Array(size);
  for (let k = 0; k < size; k++) {
    const missingMl = (surfaceMl[k]! + bodyMl[k]!) / capacityFactor[k]!;
    left[k] = (capacityMl - missingMl - unusableMl) / usableMl;
  }
  return left;
}

function believe(on: Observed, measured: Measured): Problem | null {
  const surprise = surpriseSd(on.particles.weightFrac, measured);
  if (Math.abs(surprise) > DOUBT_SD) return doubt(on, measured);
  assimilate(on.particles, on.tank, measured);
  return null;
}

/** What a doubt tells beside its code. */
export interface DoubtData {
  readonly kind: "weighed" | "watered" | "checked";
  readonly atUtcMs: number;
  /** Not a number for a look by hand. */
  readonly seen: number;
  /** Of a weighing kg, of water poured and drained mL kept, of a look by hand the share of usable water left. */
  readonly expected: { readonly low: number; readonly mid: number; readonly high: number };
  /** By hand or by weight it is wetter than was thought. */
  readonly wetter: boolean;
  readonly question: LikelyQuestion;
}

/** "This does not fit", with what was seen, what was expected, whether the pot is wetter than that, and the likely question. */
function doubt(on: Observed, measured: Measured, feelsHeavy = false): Problem {
  const sorted = [...measured.foretold].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  const expected = { low: at(0.1), mid: at(0.5), high: at(0.9) };
  const kind = on.entry.body.kind as DoubtData["kind"];
  const data: DoubtData = {
    kind,
    atUtcMs: on.entry.atUtcMs,
    seen: measured.seen,
    expected,
    wetter: feelsHeavy || (kind === "weighed" && measured.seen > expected.mid),
    question: likelyQuestion(on, { seen: measured.seen, expected: expected.mid }),
  };
  return { code: "does-not-fit", path: ["journal", on.entry.id], data: { ...data } };
}
