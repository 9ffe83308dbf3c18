import type { Problem } from "../../problem.ts";
import { roomMl } from "../balance/take-in.ts";
import { contentMl } from "../balance/tank.ts";
import { assimilate, type Measured, surpriseSd } from "./assimilate.ts";
import { feelLikelihood } from "./feel.ts";
import { likelyQuestion } from "./likely-question.ts";
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
/** Less than this share of what was poured is no sign that the pot is full. */
const RAN_THROUGH_FRAC = 0.02;

/** A weighing: moves the cloud, or is doubted. */
export function observeMass(on: Observed, massKg: number): Problem | null {
  const { tank, particles, inVessel } = on;
  const foretold = particles.tareKg.map(
    (tareKg, k) => inVessel.hold.dryMassKg + tareKg + contentMl(tank, k) / 1000,
  );
  const sd = SCALE_SD.shareFrac * massKg + SCALE_SD.kg;
  return believe(on, { seen: massKg, sd, foretold });
}

/**
 * What was poured and what ran out: the rest was room. Says exactly how dry the pot was, if anything ran out; if
 * nothing did, only that there was at least so much room.
 */
export function observePour(on: Observed, given: { pouredMl: number; drainedMl: number }): Problem | null {
  const { tank, inVessel } = on;
  const foretold = tank.surfaceMl.map((_, k) => roomMl(tank, k));
  const keptMl = given.pouredMl - given.drainedMl;
  const sd = Math.hypot(
    JUG_SD.shareFrac * given.pouredMl + JUG_SD.ml,
    JUG_SD.fullFrac * inVessel.hold.capacityMl,
  );
  const measured = { seen: keptMl, sd, foretold };
  if (given.drainedMl > RAN_THROUGH_FRAC * given.pouredMl) return believe(on, measured);
  const likelihood = foretold.map((roomMl) => 1 / (1 + Math.exp((1.7 * (keptMl - roomMl)) / sd)));
  if (reweigh(on.particles, { likelihood, seed: on.seed }) > DOUBT_FEEL) return null;
  return doubt(on, measured);
}

/** A finger in the mix or a pot lifted in the hand: weak, worded as likelihoods. */
export function observeFeel(
  on: Observed,
  check: { dryToCm?: number; feel?: "light" | "middling" | "heavy" },
): Problem | null {
  const { hold } = on.inVessel;
  const leftFrac = on.particles.capacityFactor.map(
    (factor, k) => (contentMl(on.tank, k) / factor - hold.unusableMl) / hold.usableMl,
  );
  const likelihood = feelLikelihood(leftFrac, { ...check, depthCm: on.depthCm });
  if (reweigh(on.particles, { likelihood, seed: on.seed }) > DOUBT_FEEL) return null;
  return doubt(on, { seen: Number.NaN, sd: Number.NaN, foretold: leftFrac });
}

function believe(on: Observed, measured: Measured): Problem | null {
  const surprise = surpriseSd(on.particles.weightFrac, measured);
  if (Math.abs(surprise) > DOUBT_SD) return doubt(on, measured);
  assimilate(on.particles, on.tank, measured);
  return null;
}

/** "This does not fit", with what was seen, what was expected, and the likely question. */
function doubt(on: Observed, measured: Measured): Problem {
  const sorted = [...measured.foretold].sort((a, b) => a - b);
  const at = (share: number) => sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
  const expected = { low: at(0.1), mid: at(0.5), high: at(0.9) };
  return {
    code: "does-not-fit",
    path: ["journal", on.entry.id],
    data: {
      kind: on.entry.body.kind,
      atUtcMs: on.entry.atUtcMs,
      seen: measured.seen,
      expected,
      question: likelyQuestion(on, { seen: measured.seen, expected: expected.mid }),
    },
  };
}
