import type { JournalEntry } from "../../journal/entry.ts";
import type { CalendarDay } from "../../site/site.ts";
import type { KnownPot, Stage } from "../world/known-pot.ts";
import type { Outlook, PlaceNormals } from "./outlook.ts";

/** What is done to one pot on a morning. */
export interface MorningDeed {
  /** Infinity means until it runs through; 0 nothing. */
  readonly pourMl: number;
  /** Index of the spot it is carried to; null where it stays. */
  readonly toSpot: number | null;
  /** Hours after the round's start at which it is carried. */
  readonly carryAfterH?: number;
  /** A shield against rain put up in the round, and its trouble in trips. */
  readonly shield?: {
    readonly letsInFrac: number;
    readonly coldLeftFrac: number;
    readonly hours: number;
    readonly trips: number;
  };
}

export const NOTHING: MorningDeed = { pourMl: 0, toSpot: null };

/** What a grower can see, lift and poke at a pot before deciding. Asking costs nothing and is noisy. */
export interface PotView {
  readonly known: KnownPot;
  readonly spot: number;
  /** Whole days since it was last poured on, planted; Infinity when never. */
  readonly sinceWaterDays: number;
  readonly sincePlantedDays: number;
  readonly roots: "settled" | "worked-on";
  feel(): "light" | "middling" | "heavy";
  /** Depth to which a finger or stick finds the mix dry, whole cm up to 6. */
  dryToCm(): number;
}

export interface MorningView {
  readonly day: number;
  readonly date: CalendarDay;
  /** The round begins. */
  readonly nowUtcMs: number;
  /** 0 to 11. */
  readonly month: number;
  readonly outlook: Outlook;
  readonly normals: PlaceNormals;
  readonly pots: readonly PotView[];
}

/** A way of looking after pots. */
export interface Policy {
  readonly id: string;
  /** Begins a season with nothing remembered. */
  begin(stage: Stage): PolicyRun;
}

export interface PolicyRun {
  /** One deed a pot, in the order of the view's pots. */
  morning(view: MorningView): readonly MorningDeed[];
  /** Told what the diary says, where the policy keeps one: plantings, deeds, what hands and scale found. */
  noted?(entries: readonly JournalEntry[]): void;
}
