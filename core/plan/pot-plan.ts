import type { TroubleSign } from "../journal/entry.ts";
import type { LikelyQuestion } from "../pot/learn/likely-question.ts";
import type { PotId } from "../pot/pot.ts";
import type { Instant } from "../site/instant.ts";
import type { CalendarDay } from "../site/site.ts";
import type { SpotId } from "../site/spot.ts";
import type { Spread } from "../weather/spread.ts";
import type { Deed, Lift } from "./deed.ts";

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
