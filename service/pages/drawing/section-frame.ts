import type { Vessel } from "../../../core/pot/vessel.ts";

/** Where a section lies on its sheet. */
export interface SectionFrame {
  readonly axisPx: number;
  /** Drawn x of a half width, and y of a height above the base. */
  x(offsetCm: number): number;
  y(heightCm: number): number;
  readonly widthPx: number;
  readonly heightPx: number;
}

export interface FramedSection {
  readonly vessel: Vessel;
  /** Drawn size of a centimetre; the same for all pots that stand together. */
  readonly pxPerCm: number;
  readonly plant?: { readonly widthCm: number; readonly heightCm: number };
  /** The plant is cut off here above the rim. */
  readonly mostAboveCm?: number;
  /** What stands beside the pot. */
  readonly layers?: readonly unknown[];
  readonly marks?: readonly unknown[];
}

/** Walls stand out by this, and the saucer reaches this far round the base, cm. Looks only. */
const WALL_CM = 1.6;
export const SAUCER_REACH_CM = 3;
/** Room for the rod and for the names of layers, px. */
export const STICK_PX = 96;
export const LAYERS_PX = 118;
export const MOST_ABOVE_CM = 40;

/** Whole pixels, so that the sheet is as large as it says. */
export function sectionFrame(section: FramedSection): SectionFrame {
  const { vessel, plant, pxPerCm, mostAboveCm = MOST_ABOVE_CM, marks, layers } = section;
  const aboveCm = plant ? Math.min(plant.heightCm, mostAboveCm) : 1;
  const spanCm = sectionSpanCm(section);
  const potPx = Math.ceil(spanCm * pxPerCm + 4);
  const heightPx = Math.ceil((vessel.heightCm + aboveCm) * pxPerCm + 8);
  const [axisPx, basePx] = [potPx / 2, heightPx - 5];
  return {
    axisPx,
    widthPx: potPx + (marks ? STICK_PX : 0) + (layers ? LAYERS_PX : 0),
    heightPx,
    x: (offsetCm) => axisPx + offsetCm * pxPerCm,
    y: (heightCm) => basePx - heightCm * pxPerCm,
  };
}

/** Width of pot and plant as they are drawn. */
export function sectionSpanCm({ vessel, plant }: Pick<FramedSection, "vessel" | "plant">): number {
  return Math.max(
    Math.max(vessel.topCm, vessel.baseCm) + 2 * WALL_CM,
    vessel.saucerCm === undefined ? 0 : vessel.baseCm + 2 * (SAUCER_REACH_CM + WALL_CM),
    plant ? Math.min(plant.widthCm, 1.5 * vessel.topCm) : 0,
  );
}
