import type { Action } from "../../core/plan/deed.ts";
import type { PotId } from "../../core/pot/pot.ts";
import type { CalendarDay } from "../../core/site/site.ts";
import type { SpotId } from "../../core/site/spot.ts";
import type { Figure } from "../words/units.ts";

/** A plan in sentences: plain data that page, mail, log and terminal lay out without adding a word. */
export interface Brief {
  readonly language: string;
  readonly siteId: string;
  readonly forDay: CalendarDay;
  readonly title: string;
  /** The day alone, where the place is said elsewhere. */
  readonly dayName: string;
  /** That it came late, and the days before it that had none; empty as a rule. */
  readonly timing: readonly string[];
  /** How much there is to do, in one sentence. */
  readonly lead: string;
  /** What there is to do in the few words that fit above a notification. */
  readonly headline: string;
  /** The whole brief as one line, on a day that asks for nothing and warns of nothing; else null. */
  readonly emptyLine: string | null;
  readonly sky: readonly string[];
  /** Deeds in the order of the walk. */
  readonly stops: readonly BriefStop[];
  /** Every deed that has an hour, also those of later days, earliest first. */
  readonly timed: readonly BriefDeed[];
  readonly keepDry: BriefSection<KeepDryLine>;
  /** Trouble that was noted of late, read against the pot's state. */
  readonly signs: BriefSection<SignLine>;
  /** What ends or begins after planting, today and tomorrow. */
  readonly care: BriefSection<string>;
  /** Which pots are to be looked at again in the evening. */
  readonly evening: string | null;
  readonly nothing: { readonly count: number; readonly sentence: string };
  /** Spells ahead in a sentence each, earliest first. */
  readonly spells: readonly string[];
  readonly coming: BriefSection<ComingDay>;
  readonly windows: BriefSection<string>;
  readonly cautions: BriefSection<BriefCaution>;
  readonly trust: BriefSection<string> & { readonly credit: string };
  readonly changes: BriefSection<string>;
  /** Set on invented weather. */
  readonly demo: string | null;
}

/** How the brief of a day came; reckoned by the jobs, since a plan does not know. */
export interface BriefTiming {
  /** When it was made, where that was after its hour. */
  readonly lateUtcMs: number | null;
  readonly dueUtcMs: number;
  /** Days just before it that had none, earliest first. */
  readonly missedDays: readonly CalendarDay[];
}

export interface BriefSection<T> {
  readonly heading: string;
  readonly lines: readonly T[];
}

export interface BriefStop {
  readonly spotId: SpotId;
  readonly name: string;
  readonly deeds: readonly BriefDeed[];
  /** The same deeds for reading in a message: those alike as one where they are many. */
  readonly groups: readonly DeedGroup[];
}

/** Deeds of one stop that read as one: "Water: 5 pots, by 09:00.", then each pot with its amount. */
export interface DeedGroup {
  readonly sentence: string;
  readonly reason: string;
  readonly confidence: string;
  /** What could hurt at each of them. */
  readonly notes: readonly string[];
  /** Pots with what differs between them; empty for a deed that stands alone. */
  readonly items: readonly string[];
  readonly deeds: readonly BriefDeed[];
}

export interface BriefDeed {
  readonly potId: PotId;
  readonly action: Action;
  readonly verb: string;
  readonly pot: string;
  /** How many alike the pot stands for. */
  readonly potCount: number;
  /** Amount in words: "850 ml each", "until it runs through, about 1.2 l". */
  readonly amount: string | null;
  /** The amount apart, for large print. */
  readonly figure: Figure | null;
  readonly amountMl: number | null;
  readonly untilItRunsThrough: boolean;
  readonly place: string | null;
  readonly toSpotId: SpotId | null;
  readonly hour: string | null;
  /** When it falls due, epoch ms: the latest hour where one is given, else the earliest. */
  readonly dueUtcMs: number | null;
  readonly reason: string;
  /** The reason without its figures, as it holds for several pots. */
  readonly reasonInShort: string;
  readonly confidence: string;
  /** What could hurt, said where the deed stands. */
  readonly notes: readonly string[];
  /** Of these how it is done and what could hurt, which whoever does not know the pot needs most. */
  readonly handling: readonly string[];
  /** The whole as one line: "Carry under cover: Lemon, to Shed, by 13:00." */
  readonly sentence: string;
}

export interface KeepDryLine {
  readonly potId: PotId;
  readonly pot: string;
  readonly until: string | null;
  readonly reason: string;
  /** The whole as one line. */
  readonly sentence: string;
}

export interface SignLine {
  readonly potId: PotId;
  readonly pot: string;
  /** "Wilting, noted on Friday 27 November." */
  readonly seen: string;
  /** Likeliest first, each with its share. */
  readonly causes: string;
  /** The one look that tells them apart. */
  readonly check: string;
  /** What is left undone until then. */
  readonly meanwhile: string | null;
  readonly notes: readonly string[];
}

export interface ComingDay {
  readonly day: CalendarDay;
  readonly name: string;
  readonly sky: string;
  /** Deeds that already have a day, those alike in one line. */
  readonly deeds: readonly string[];
  /** The same, each with its handling. */
  readonly handled: readonly string[];
}

export interface BriefCaution {
  readonly code: string;
  readonly sentence: string;
  /** Binds the hours of the round itself, so it stands before the deeds. */
  readonly isUrgent: boolean;
  /** The pots that it concerns; none: everything. */
  readonly potIds: readonly PotId[];
}
