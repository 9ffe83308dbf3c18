import type { TroubleSign } from "../../journal/entry.ts";
import type { AvoidCode, CauseCode, CheckCode } from "../pot-plan.ts";
import type { Findings } from "./findings.ts";

/** How likely a cause is for a sign: a start that holds for any pot, and what the findings add. */
export type Weighing = Readonly<Partial<Record<CauseCode, (found: Findings) => number>>>;

/**
 * Signs and what they may mean. Common practice, put in numbers by us: the start of each is how often growers come to
 * that answer when nothing else is known, the findings then tell.
 */
export const CAUSES_BY_SIGN: Readonly<Record<TroubleSign, Weighing>> = {
  wilting: {
    thirst: ({ dry }) => 0.1 + 2 * dry,
    "wet-roots": ({ wet, dry }) => 0.1 + 1.5 * wet * (1 - dry),
    "hot-afternoon": ({ hot, dry }) => 0.05 + 1.2 * hot * (1 - dry),
    "lost-roots": ({ rootsLost }) => 1.5 * rootsLost,
    "cold-hurt": ({ coldNight }) => 1.5 * coldNight,
  },
  "soft-stem": {
    "cold-wet-rot": ({ coldAndWet }) => 0.15 + 2 * coldAndWet,
    "wet-roots": ({ wet }) => 0.15 + 1.2 * wet,
    thirst: ({ dry }) => 0.1 + 1.2 * dry,
    "cold-hurt": ({ coldNight }) => 0.05 + 1.5 * coldNight,
    resting: ({ resting, wet }) => 0.6 * resting * (1 - wet),
  },
  wrinkled: {
    thirst: ({ dry }) => 0.15 + 2 * dry,
    "wet-roots": ({ wet }) => 0.1 + 1.2 * wet,
    "lost-roots": ({ rootsLost }) => 1.2 * rootsLost,
    resting: ({ resting, wet }) => 1.2 * resting * (1 - wet),
  },
  "yellow-leaves": {
    "wet-roots": ({ wet }) => 0.15 + 1.2 * wet,
    thirst: ({ dry }) => 0.1 + dry,
    resting: ({ resting }) => 1.2 * resting,
    "cold-hurt": ({ coldNight }) => coldNight,
    "dim-light": ({ dim }) => 0.8 * dim,
    "old-leaves": () => 0.3,
    pests: () => 0.1,
  },
  "dropped-leaves": {
    resting: ({ resting }) => 0.05 + 1.4 * resting,
    thirst: ({ dry }) => 0.1 + 1.2 * dry,
    "wet-roots": ({ wet }) => 0.1 + wet,
    "cold-hurt": ({ coldNight }) => 0.05 + 1.2 * coldNight,
    "dim-light": ({ dim }) => 0.8 * dim,
    "lost-roots": ({ rootsLost }) => 0.8 * rootsLost,
  },
  "water-runs-through": {
    "sheds-water": ({ sheds, dry }) => 0.1 + 2 * sheds + 0.5 * dry,
    "lost-roots": ({ rootsLost }) => 0.2 * rootsLost,
    "wet-roots": ({ wet }) => 0.1 + 0.6 * wet,
  },
  pests: { pests: () => 1 },
  scorched: {
    sunburn: ({ newSun, hot }) => 0.3 + newSun + 0.5 * hot,
    thirst: ({ dry, hot }) => 0.1 + dry * hot,
    "cold-hurt": ({ coldNight }) => coldNight,
  },
  other: {
    "old-leaves": () => 0.1,
    pests: () => 0.1,
    "wet-roots": ({ wet }) => wet,
    thirst: ({ dry }) => dry,
  },
};

/** The look that speaks for or against a cause. */
export const CHECK_FOR: Readonly<Record<CauseCode, CheckCode>> = {
  thirst: "lift-or-weigh",
  "wet-roots": "stick-to-the-base",
  "cold-wet-rot": "press-the-stem",
  "hot-afternoon": "look-again-at-dawn",
  "cold-hurt": "press-the-stem",
  "lost-roots": "look-again-at-dawn",
  resting: "press-the-stem",
  sunburn: "which-side-faces-the-sun",
  "dim-light": "which-side-faces-the-sun",
  "sheds-water": "lift-or-weigh",
  "blocked-hole": "watch-the-hole",
  pests: "look-under-leaves",
  "old-leaves": "look-under-leaves",
};

/** What would make it worse if this is the cause. */
export const AVOID_IF: Readonly<Record<CauseCode, readonly AvoidCode[]>> = {
  thirst: ["feed"],
  "wet-roots": ["water", "feed"],
  "cold-wet-rot": ["water", "feed"],
  "hot-afternoon": ["water"],
  "cold-hurt": ["prune", "feed"],
  "lost-roots": ["feed", "full-sun", "repot"],
  resting: ["water", "feed", "repot"],
  sunburn: ["prune", "full-sun"],
  "dim-light": ["feed", "full-sun"],
  "sheds-water": ["feed"],
  "blocked-hole": ["water"],
  pests: ["feed", "spray"],
  "old-leaves": ["spray"],
};
