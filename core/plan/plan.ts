import type { TroubleSign } from "../journal/entry.ts";
import type { LikelyQuestion } from "../pot/learn/likely-question.ts";
import type { PotId } from "../pot/pot.ts";
import type { CalendarDay } from "../site/site.ts";
import type { SpotId } from "../site/spot.ts";
import type { Calibration } from "./score/calibration.ts";

/** ISO 8601 in UTC, to the minute, e.g. "2026-11-25T14:00Z". */
export type Instant = string;

/**
 * The plan is a value: codes and numbers only, no sentence. Pages, mail, push, calendar and command line render it;
 * nothing computes advice a second way.
 */
export interface Plan {
  readonly version: 1;
  readonly siteId: string;
  readonly zone: string;
  readonly issuedAt: Instant;
  readonly forDay: CalendarDay;
  /** The hours reckoned with. */
  readonly horizon: { readonly from: Instant; readonly to: Instant };
  readonly weatherAge: WeatherAge;
  /** One a pot, in walking order; a pot that needs nothing has action "none". */
  readonly pots: readonly PotPlan[];
  readonly spots: readonly SpotPlan[];
  readonly days: readonly DayOutline[];
  /** Weather ahead that lasts or passes a limit of the pots, earliest first; left out when there is none. */
  readonly spells?: readonly SkySpell[];
  readonly workWindows: readonly WorkWindow[];
  readonly cautions: readonly Caution[];
  readonly changesSince: readonly Change[];
  /** How far what was told in past plans came true; left out while none is known. */
  readonly kept?: Calibration;
}

export interface WeatherAge {
  readonly source: "primary" | "fallback" | "demo" | "case";
  readonly credit: string;
  readonly fetchedAt: Instant;
  readonly ageHours: number;
  /** Real members in the ensemble; 0 when the spread was drawn from published forecast errors. */
  readonly memberCount: number;
  /** What stood in for inputs that were missing, with its price in certainty. */
  readonly standIns: readonly StandIn[];
  readonly trust: "full" | "reduced" | "poor";
  /** Whole hours from `horizon.from` that could be reckoned. */
  readonly knownHours: number;
}

export interface StandIn {
  readonly quantity:
    | "radiation"
    | "humidity"
    | "wind"
    | "rain"
    | "temperature"
    | "et0"
    | "members"
    | "whole-forecast";
  readonly method: string;
  readonly shareOfHoursFrac: number;
  /** Relative error of daily ET0, or absolute error in the unit of the quantity, as the method's source gives it. */
  readonly errorEstimate: number;
}

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

export interface PotPlan extends Deed {
  readonly potId: PotId;
  readonly count: number;
  /** Where it stands now. */
  readonly spotId: SpotId;
  /** Further deeds for the same pot, in order. */
  readonly then: readonly Deed[];
  /** What should wait; left out when nothing need. */
  readonly holds?: readonly Hold[];
  /** What ends or begins after planting within the days reckoned; left out when nothing does. */
  readonly milestones?: readonly Milestone[];
  /** What the grower noted lately, read against the pot's state. */
  readonly seen?: readonly Diagnosis[];
  /** Looks and weighings of late that fitted no version of the pot, oldest first. */
  readonly doubted?: readonly Doubted[];
  readonly outlook: PotOutlook;
}

/** Something that is not to be done yet. */
export interface Hold {
  readonly kind: "feed" | "full-sun" | "repot" | "treat";
  /** Last day of waiting; null while it depends on warmth or growth that is not in sight. */
  readonly until: CalendarDay | null;
  readonly because: "fresh-roots" | "resting" | "cold-nights" | "rain" | "heat";
}

/** A day on which something after planting ends or begins. */
export interface Milestone {
  readonly kind: "first-drink" | "more-sun" | "feed";
  readonly day: CalendarDay;
}

/** An observation that does not fit, and what to ask about it. */
export interface Doubted {
  readonly entryId: string;
  readonly notedAt: Instant;
  /** Four fifths of what was expected: of a weighing, or of what poured water would leave in the pot; none by hand. */
  readonly expected?: { readonly low: number; readonly high: number; readonly unit: "kg" | "ml" };
  /** By hand or by weight the pot is wetter than was thought. */
  readonly wetter: boolean;
  readonly question: LikelyQuestion;
}

/** A sign of trouble and what it may mean, likeliest first. */
export interface Diagnosis {
  readonly sign: TroubleSign;
  readonly notedAt: Instant;
  readonly causes: readonly { readonly code: CauseCode; readonly shareFrac: number }[];
  /** The one look that tells the first two apart. */
  readonly check: CheckCode;
  /** What would make it worse while that is not known. */
  readonly avoid: readonly AvoidCode[];
}

export type CauseCode =
  | "thirst"
  | "wet-roots"
  | "cold-wet-rot"
  | "hot-afternoon"
  | "cold-hurt"
  | "lost-roots"
  | "resting"
  | "sunburn"
  | "dim-light"
  | "sheds-water"
  | "blocked-hole"
  | "pests"
  | "old-leaves";

export type CheckCode =
  | "lift-or-weigh"
  | "stick-to-the-base"
  | "press-the-stem"
  | "look-again-at-dawn"
  | "look-at-the-roots"
  | "look-under-leaves"
  | "watch-the-hole"
  | "which-side-faces-the-sun";

export type AvoidCode = "water" | "feed" | "repot" | "full-sun" | "prune" | "spray";

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

/** One pot's coming days where it stands, if nothing is done. Arrays run by day from `forDay`. */
export interface PotOutlook {
  /** Content as a share of what the drained pot holds. */
  readonly nowFrac: Spread;
  readonly byDayFrac: readonly Spread[];
  readonly refillFrac: number;
  readonly capacityMl: number;
  readonly reachesRefillShareFrac: readonly number[];
  readonly wetBaseHours: Spread;
  readonly coldestC: Spread;
  readonly daysToRefill: Spread | null;
  /** The same after the water that is asked for today; left out where none is, null where that is not in sight. */
  readonly againDays?: Spread | null;
  readonly massKg: number;
  readonly restingShareFrac: number;
  readonly dryUntil: CalendarDay | null;
  /** Content above which the base counts as waterlogged; left out where it never does at rest and, as all below, by older plans. */
  readonly wetAboveFrac?: number;
  readonly learned?: Learned;
  /** Left out once it is over. */
  readonly aftercare?: AftercareDays;
  readonly lift?: Lift;
}

/** What weighing and checking have taught of a pot, times what its kind and the library say: 1 is as expected. */
export interface Learned {
  readonly thirst: Spread;
  readonly capacity: Spread;
}

/** The way of a freshly planted pot: the last days of each stage, by common practice. */
export interface AftercareDays {
  readonly stage: "dry" | "first-drink" | "easing";
  readonly dryUntil: CalendarDay;
  readonly shadeUntil: CalendarDay;
  readonly noFeedUntil: CalendarDay;
}

/** Tenth, fiftieth and ninetieth percentile of the cloud. */
export interface Spread {
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

export interface SpotPlan {
  readonly spotId: SpotId;
  readonly potCount: number;
  readonly placesLeft: number | null;
  /** What the pots weigh that stand there, and would weigh soaked: a floor has limits. */
  readonly loadKg?: { readonly now: number; readonly soaked: number };
  readonly rainByDayMm: readonly Spread[];
  readonly coldestByDayC: readonly Spread[];
}

/** The sky over the site, by day. */
export interface DayOutline {
  readonly day: CalendarDay;
  readonly rainMm: Spread;
  readonly rainShareFrac: number;
  readonly peakRainMmPerH: number;
  readonly tempMinC: Spread;
  readonly tempMaxC: Spread;
  readonly gustMPerS: number;
  readonly et0Mm: number;
  /** Hours with thunder in reach, as instants at which the hour begins. */
  readonly thunderHours: readonly Instant[];
}

/**
 * A spell ahead. Wet: likely rain. Cold, hot, gusts: beyond the line at which the first of the pots suffers.
 */
export interface SkySpell {
  readonly kind: "wet" | "cold" | "hot" | "gusts";
  readonly from: Instant;
  /** Left out when it outlasts the hours reckoned. */
  readonly to?: Instant;
  /** Share of the courses of weather that bring it; 1 where only one course is known. */
  readonly shareFrac: number;
  readonly numbers: Readonly<Record<string, number>>;
}

export interface WorkWindow {
  readonly from: Instant;
  readonly to: Instant;
  readonly dryShareFrac: number;
  readonly hottestHeatIndexC: number;
  readonly dryDaysAfter: number;
  /** When to begin soaking or damping down what the mixes in use need, where there is still time for it. */
  readonly prepareFrom?: Instant;
}

export interface Caution {
  readonly code:
    | "thunder"
    | "heat"
    | "lift"
    | "sap"
    | "old-weather"
    | "no-ensemble"
    | "official-warnings"
    | "no-room";
  readonly potIds: readonly PotId[];
  readonly from?: Instant;
  readonly to?: Instant;
  readonly numbers: Readonly<Record<string, number | string>>;
}

export interface Change {
  readonly potId: PotId;
  readonly was: Action;
  readonly is: Action;
  readonly because: "weather" | "journal" | "day-passed";
}
