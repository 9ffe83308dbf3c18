import type { RetentionCurve } from "./curve.ts";

/** A central value with the range that honest sources leave open; low <= mid <= high. */
export interface Ranged {
  readonly low: number;
  readonly mid: number;
  readonly high: number;
}

export type ComponentStatus = "published" | "hobby-or-seller" | "relative-measured" | "from-memory" | "own";

/** The figures that a grower may know of a component. */
export const TOLD_FIGURES = [
  "dryDensityKgPerL",
  "totalPorosityFrac",
  "cupCapacityFrac",
  "waterAt10cmFrac",
  "waterAt50cmFrac",
  "waterAt100cmFrac",
] as const;

/** A figure that a grower may know of a component. */
export type ToldFigure = (typeof TOLD_FIGURES)[number];

/** One thing that goes into a mix. */
export interface Component {
  /** Kebab-case name. */
  readonly id: string;
  /** What the grower calls it; the library's names stand in the catalogue. */
  readonly name?: string;
  readonly dryDensityKgPerL: Ranged;
  readonly totalPorosityFrac: Ranged;
  /** Water at suctions of 10, 50 and 100 cm, share of volume. */
  readonly waterAt10cmFrac: Ranged;
  readonly waterAt50cmFrac: Ranged;
  readonly waterAt100cmFrac: Ranged;
  /** What a drained cylinder 9 cm tall holds: the figure that home tests of grains support best. */
  readonly cupCapacityFrac?: Ranged;
  readonly curve: RetentionCurve;
  /** Capacity after ordinary watering over capacity after full wetting; left out where they are the same. */
  readonly asWateredFactor?: Ranged;
  /** Below this water content the dry material sheds water. */
  readonly repellentBelowFrac?: number;
  readonly grain: "fine" | "medium" | "coarse";
  /** Middle grain size, for the packing of mixes; the middle of the class when left out. */
  readonly grainMm?: number;
  /** Fibre or crumbs, which do not trickle into the voids of coarser grains. */
  readonly crumbly?: boolean;
  readonly role: "draining" | "holding";
  readonly compost: boolean;
  /** Codes of the preparation, nutrient and caution notes; the words stand in the catalogue. */
  readonly prepare: readonly ("rinse" | "sieve" | "soak" | "damp-down" | "let-mature")[];
  readonly nutrients: "none" | "low" | "rich" | "locks-nitrogen";
  readonly caution: "none" | "dust" | "silica-dust" | "mould-and-bacteria";
  readonly status: ComponentStatus;
  /** Of a grower's own: the figures that were told. The rest was bracketed or follows from these. */
  readonly told?: readonly ToldFigure[];
  /** Keys in core/sources.ts. */
  readonly sources: readonly string[];
}
