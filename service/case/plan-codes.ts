import type { Action, Confidence, ReasonCode } from "../../core/plan/deed.ts";
import type { Caution, StandIn } from "../../core/plan/plan.ts";
import type { AvoidCode, CauseCode, CheckCode } from "../../core/plan/pot-plan.ts";
import type { LikelyQuestion } from "../../core/pot/learn/likely-question.ts";

/** The codes of a plan as lists; the keyed tables fail to compile when a code is forgotten or made up. */
export const ACTIONS = namesOf<Action>({
  water: 1,
  "keep-dry": 1,
  "carry-in": 1,
  "carry-out": 1,
  none: 1,
  "empty-saucer": 1,
  tilt: 1,
  brace: 1,
  shade: 1,
  "top-cover": 1,
  "soak-slowly": 1,
  "clear-hole": 1,
  "look-at-roots": 1,
});

export const REASONS = namesOf<ReasonCode>({
  "at-refill-point": 1,
  "refill-point-today": 1,
  "part-before-cold": 1,
  "part-for-air": 1,
  "rain-will-do": 1,
  "rain-does-not-reach": 1,
  "freshly-planted-dry": 1,
  "first-drink-due": 1,
  "leafy-watered-in": 1,
  "cold-nights-hold-water": 1,
  resting: 1,
  "rain-on-fresh-roots": 1,
  "rain-would-waterlog": 1,
  "base-without-air": 1,
  "wet-before-cold": 1,
  "cold-night": 1,
  gusts: 1,
  hail: 1,
  "heat-and-sun": 1,
  "too-dim": 1,
  "danger-past": 1,
  "sun-by-steps": 1,
  "saucer-full": 1,
  "sheds-water": 1,
  "stays-wet": 1,
  "trouble-seen": 1,
  "still-wet": 1,
  "found-wetter": 1,
  "has-enough": 1,
  "stands-drought": 1,
  "no-room": 1,
  "weather-unknown": 1,
  "too-heavy": 1,
});

export const CAUTIONS = namesOf<Caution["code"]>({
  thunder: 1,
  heat: 1,
  lift: 1,
  sap: 1,
  "old-weather": 1,
  "no-ensemble": 1,
  "official-warnings": 1,
  "no-room": 1,
});

export const CONFIDENCE_WORDS = namesOf<Confidence["word"]>({
  unlikely: 1,
  "about-even": 1,
  likely: 1,
  "very-likely": 1,
  "near-certain": 1,
});

export const STAND_IN_FOR = namesOf<StandIn["quantity"]>({
  radiation: 1,
  humidity: 1,
  wind: 1,
  rain: 1,
  temperature: 1,
  et0: 1,
  members: 1,
  "whole-forecast": 1,
});

export const CAUSES = namesOf<CauseCode>({
  thirst: 1,
  "wet-roots": 1,
  "cold-wet-rot": 1,
  "hot-afternoon": 1,
  "cold-hurt": 1,
  "lost-roots": 1,
  resting: 1,
  sunburn: 1,
  "dim-light": 1,
  "sheds-water": 1,
  "blocked-hole": 1,
  pests: 1,
  "old-leaves": 1,
});

export const CHECKS = namesOf<CheckCode>({
  "lift-or-weigh": 1,
  "stick-to-the-base": 1,
  "press-the-stem": 1,
  "look-again-at-dawn": 1,
  "look-at-the-roots": 1,
  "look-under-leaves": 1,
  "watch-the-hole": 1,
  "which-side-faces-the-sun": 1,
});

export const AVOIDS = namesOf<AvoidCode>({
  water: 1,
  feed: 1,
  repot: 1,
  "full-sun": 1,
  prune: 1,
  spray: 1,
});

export const QUESTIONS = namesOf<LikelyQuestion>({
  "mix-changed": 1,
  "hole-blocked": 1,
  "water-not-noted": 1,
  "place-not-noted": 1,
  "ran-past-dry-mix": 1,
  "another-pot": 1,
  "look-closer": 1,
});

function namesOf<T extends string>(table: Record<T, 1>): T[] {
  return Object.keys(table) as T[];
}
