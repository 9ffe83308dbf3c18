import type { MixId } from "../mix/mix.ts";
import type { PotId } from "../pot/pot.ts";
import type { Vessel } from "../pot/vessel.ts";
import type { SpotId } from "../site/spot.ts";

export type EntryId = string;

/** What was done to the roots, mildest first; decides how long the pot stays dry. */
export type RootWork = "undisturbed" | "teased" | "pruned" | "bare-root" | "rot-surgery" | "cutting";

export type WaterGiven =
  | { readonly kind: "measured"; readonly waterMl: number }
  | { readonly kind: "ran-through" }
  | { readonly kind: "poured-drained"; readonly pouredMl: number; readonly drainedMl: number };

export type TroubleSign =
  | "wilting"
  | "soft-stem"
  | "wrinkled"
  | "yellow-leaves"
  | "dropped-leaves"
  | "water-runs-through"
  | "pests"
  | "scorched"
  | "other";

/** What happened. The first group concerns one pot, the second the whole site, the third other entries. */
export type EntryBody =
  | {
      readonly kind: "planted";
      readonly vessel: Vessel;
      readonly mixId: MixId;
      readonly roots: RootWork;
      readonly mixWet?: "dry" | "moist" | "watered-in";
    }
  | { readonly kind: "watered"; readonly given: WaterGiven }
  | { readonly kind: "moved"; readonly toSpotId: SpotId }
  | { readonly kind: "weighed"; readonly massKg: number }
  | { readonly kind: "checked"; readonly dryToCm?: number; readonly feel?: "light" | "middling" | "heavy" }
  | { readonly kind: "fed" }
  | { readonly kind: "treated"; readonly text?: string }
  | { readonly kind: "pruned" }
  | { readonly kind: "leaf"; readonly state: "in-leaf" | "leafless" | "new-growth" }
  | { readonly kind: "trouble"; readonly sign: TroubleSign; readonly text?: string }
  | { readonly kind: "note"; readonly text: string }
  | { readonly kind: "photo"; readonly ref: string; readonly text?: string }
  | { readonly kind: "gone"; readonly how: "died" | "given-away" | "other" }
  | { readonly kind: "rain-gauge"; readonly rainMm: number; readonly sinceUtcMs: number }
  | {
      readonly kind: "thermometer";
      readonly minC: number;
      readonly maxC?: number;
      readonly sinceUtcMs: number;
    }
  | {
      readonly kind: "correction";
      readonly ofEntryId: EntryId;
      readonly atUtcMs: number;
      readonly potId?: PotId;
      readonly body: EntryBody;
    }
  | { readonly kind: "undo"; readonly ofEntryId: EntryId };

export interface JournalEntry {
  /** Given by whoever wrote it, so that a repeated send is one entry. */
  readonly id: EntryId;
  /** When it happened; may lie before `recordedUtcMs`. */
  readonly atUtcMs: number;
  readonly recordedUtcMs: number;
  /** Absent on site-wide entries and on entries about entries. */
  readonly potId?: PotId;
  readonly body: EntryBody;
}
