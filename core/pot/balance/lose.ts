import type { Step } from "./step.ts";
import type { Tank, TankColumns } from "./tank.ts";

// Places in a particle's row. One row a particle, because seventeen columns side by side keep the processor busy with
// addresses: this layout runs the loop half as fast again.
const CAPACITY = 0;
const WET_ABOVE = 1;
const SURFACE_MOST = 2;
const SURFACE_USABLE = 3;
const SURFACE_PER_MM = 4;
const SORPTION = 5;
const LATE_SHARE = 6;
const RISE = 7;
const BODY_MOST = 8;
const BODY_USABLE = 9;
const WALL_PER_MM = 10;
const THIRST_PER_MM = 11;
const PER_SURFACE_USABLE = 12;
const PER_BODY_USABLE = 13;
const PER_SURFACE_MOST = 14;
const PER_BODY_MOST = 15;
const COVER_PER_ML = 16;
const ROW = 17;

/** The columns that `lose` reads, one row a particle. */
export function lossRows(columns: TankColumns): Float64Array {
  const order = [
    columns.capacityMl,
    columns.wetAboveMl,
    columns.surfaceMostMl,
    columns.surfaceUsableMl,
    columns.surfaceMlPerMm,
    columns.sorptionMl2PerH,
    columns.lateShare,
    columns.riseMlPerH,
    columns.bodyMostMl,
    columns.bodyUsableMl,
    columns.wallPerMm,
    columns.thirstMlPerMm,
    columns.perSurfaceUsable,
    columns.perBodyUsable,
    columns.perSurfaceMost,
    columns.perBodyMost,
    columns.coverPerMl,
  ];
  const rows = new Float64Array(ROW * columns.size);
  for (const [place, column] of order.entries()) {
    for (let k = 0; k < columns.size; k++) rows[k * ROW + place] = column[k]!;
  }
  return rows;
}

/**
 * The losses of one hour, for all particles: surface, wall, plant, then the rise from the body.
 *
 * The falling stage of surface drying is the exact hour of d(missing)/dt = S2 / (2 missing) down to half, and of
 * exponential drying of a finite slab beyond; the demand caps both. [PHILIP1957, VANDERBORGHT2005 eq. 44-47]
 * The plant takes from the surface by its share of roots there, and from the body what that leaves, each cut by its
 * own dryness. [FAO56 eq. 84] Nothing here calls or divides by the particle but for one square root, and one
 * division under a top dressing.
 */
export function lose(tank: Tank, step: Step): void {
  const { size, rows, surfaceMl, bodyMl, saucerMl, surfaceRootsFrac, coverBase } = tank;
  const { evaporatedMl, wallLossMl, transpiredMl } = tank;
  const { et0Mm, stride, at, out, waterMl, wetBase, shortFrac, drainedMl, perDay } = step;
  const covered = coverBase !== 1;
  for (let k = 0; k < size; k++) {
    const row = k * ROW;
    const et0 = et0Mm[at + k * stride]!;
    let top = surfaceMl[k]!;
    let body = bodyMl[k]!;

    let demand = et0 * rows[row + SURFACE_PER_MM]!;
    if (covered) demand /= coverBase + rows[row + COVER_PER_ML]! * demand;
    const most = rows[row + SURFACE_MOST]!;
    const supply =
      top + top < most
        ? Math.sqrt(top * top + rows[row + SORPTION]!) - top
        : rows[row + LATE_SHARE]! * (most - top);
    const dried = Math.min(supply, demand);
    top += dried;
    evaporatedMl[k]! += dried;

    const wall = et0 * rows[row + WALL_PER_MM]! * (rows[row + BODY_MOST]! - body);
    body += wall;
    wallLossMl[k]! += wall;

    const thirst = et0 * rows[row + THIRST_PER_MM]!;
    const topEase = (rows[row + SURFACE_USABLE]! - top) * rows[row + PER_SURFACE_USABLE]!;
    const fromTop = thirst * surfaceRootsFrac * Math.max(0, Math.min(1, topEase));
    const bodyEase = (rows[row + BODY_USABLE]! - body) * rows[row + PER_BODY_USABLE]!;
    const fromBody = (thirst - fromTop) * Math.max(0, Math.min(1, bodyEase));
    top += fromTop;
    body += fromBody;
    transpiredMl[k]! += fromTop + fromBody;

    const rise =
      rows[row + RISE]! * (top * rows[row + PER_SURFACE_MOST]! - body * rows[row + PER_BODY_MOST]!);
    top -= rise;
    body += rise;

    surfaceMl[k] = top;
    bodyMl[k] = body;
    const water = rows[row + CAPACITY]! - top - body;
    waterMl[out + k] = water;
    wetBase[out + k] = water > rows[row + WET_ABOVE]! || drainedMl[out + k]! > 0 || saucerMl[k]! > 0 ? 1 : 0;
    shortFrac[out + k] = (thirst - fromTop - fromBody) * perDay[k]!;
  }
}
