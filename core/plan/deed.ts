import type { Instant } from "../site/instant.ts";
import type { CalendarDay } from "../site/site.ts";
import type { SpotId } from "../site/spot.ts";

export type Action = "water" | "keep-dry" | "carry-in" | "carry-out" | "none" | AidAction;

/** More than the can and the carry. */
export type AidAction =
  | "empty-saucer"
  | "tilt"
  | "brace"
  | "shade"
  | "top-cover"
  | "soak-slowly"
  | "clear-hole"
  | "look-at-roots";

/** One thing to do to one pot. */
export interface Deed {
  readonly action: Action;
  /** Water: millilitres for each pot of the entry, rounded as a grower pours. */
  readonly amountMl?: number;
  /** Water: until it runs through, amount being the expected need. */
  readonly untilItRunsThrough?: boolean;
  /** Carry: where to. */
  readonly toSpotId?: SpotId;
  /** To be done not before / by this instant. */
  readonly from?: Instant;
  readonly by?: Instant;
  /** Keep dry, or stay where it is carried, to the end of this day. */
  readonly until?: CalendarDay;
  readonly reason: Reason;
  /** Expected harm avoided against doing nothing, 1 = the plant as good as lost. */
  readonly harmAvoided: number;
  readonly confidence: Confidence;
  /** Hands for a carry, or to lean it, from the computed mass and the lifting equation. */
  readonly lift?: Lift;
  /** Time that it takes for one pot; left out where it takes none and by older plans. */
  readonly minutes?: number;
  /** Left where it stands though a carry would save more: no room, or too heavy. */
  readonly notCarried?: Reason;
}

/** The largest harm avoided, in code and numbers; the catalogue makes the sentence. */
export interface Reason {
  readonly code: ReasonCode;
  readonly numbers: Readonly<Record<string, number | string>>;
}

export type ReasonCode =
  | "at-refill-point"
  | "refill-point-today"
  | "part-before-cold"
  | "part-for-air"
  | "rain-will-do"
  | "rain-does-not-reach"
  | "freshly-planted-dry"
  | "first-drink-due"
  | "leafy-watered-in"
  | "cold-nights-hold-water"
  | "resting"
  | "rain-on-fresh-roots"
  | "rain-would-waterlog"
  | "base-without-air"
  | "wet-before-cold"
  | "cold-night"
  | "gusts"
  | "hail"
  | "heat-and-sun"
  | "too-dim"
  | "danger-past"
  | "sun-by-steps"
  | "saucer-full"
  | "sheds-water"
  | "stays-wet"
  | "trouble-seen"
  | "still-wet"
  | "found-wetter"
  | "has-enough"
  | "stands-drought"
  | "no-room"
  | "weather-unknown"
  | "too-heavy";

export interface Confidence {
  /** Fixed meaning: about-even 40-60 %, likely 60-80 %, very-likely 80-95 %, near-certain above 95 %. */
  readonly word: "unlikely" | "about-even" | "likely" | "very-likely" | "near-certain";
  readonly shareFrac: number;
}

export interface Lift {
  readonly massKg: number;
  readonly hands: "one" | "two-people" | "trolley";
  readonly limitKg: number;
}
