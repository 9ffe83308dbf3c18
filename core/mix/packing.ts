/** Solids in a loose heap of grains of one size. Chosen by us just above the
 * loosest packing of spheres, 0.555. [ONODA1990] */
const LOOSE_PACKING_FRAC = 0.57;

/** Beyond this no measured mix of growing media is known to us. */
const MOST_SHRINK_FRAC = 0.25;

/**
 * How fully fines that do not trickle - fibre, crumbs - go into the voids, against free-running grains.
 * Chosen by us because measured peat + perlite, coir + perlite and loam + pumice imply 0-5 % where grains would give
 * 10-20 %.
 */
const CRUMB_FILL_FRAC = 0.3;

export interface PackedPart {
  readonly shareFrac: number;
  readonly grainMm: number;
  readonly trickles: boolean;
}

/**
 * Volume lost when loose parts are mixed, share of the sum of the parts: fines go into the voids between coarse
 * grains. [DELARRARD1999 linear packing with the loosening and wall terms]
 *
 * @returns 0 for parts of one size, largest with some two thirds coarse
 */
export function shrinkFrac(parts: readonly PackedPart[]): number {
  return Math.min(MOST_SHRINK_FRAC, ...parts.map((carrier) => shrinkFracCarriedBy(carrier, parts)));
}

/** Shrinkage if the grains of one size carry the heap; the least over all sizes is what happens. */
function shrinkFracCarriedBy(carrier: PackedPart, parts: readonly PackedPart[]): number {
  return parts.reduce((sum, part) => sum + part.shareFrac * savedFrac(part, carrier), 0);
}

/** Share of a part's volume that vanishes beside the carrier. */
function savedFrac(part: PackedPart, carrier: PackedPart): number {
  if (part.grainMm === carrier.grainMm) return 0;
  if (part.grainMm < carrier.grainMm) return fill(part) * (1 - loosening(part.grainMm / carrier.grainMm));
  return fill(carrier) * (1 - LOOSE_PACKING_FRAC) * (1 - wall(carrier.grainMm / part.grainMm));
}

function fill(finer: PackedPart): number {
  return finer.trickles ? 1 : CRUMB_FILL_FRAC;
}

/** Coarse grains are pushed apart by fines that are not fine enough. */
function loosening(ratio: number): number {
  return Math.sqrt(1 - (1 - ratio) ** 1.02);
}

/** Fines pack less well along the face of a coarse grain. */
function wall(ratio: number): number {
  return 1 - (1 - ratio) ** 1.5;
}
