import type { Step } from "./step.ts";
import { openAccount, type Tank, type TankColumns } from "./tank.ts";

// Places in a particle's row. One row a particle, because sixteen columns side by side keep the processor busy with
// addresses: this layout runs the loop half as fast again.
const CAPACITY = 0;
const WET_ABOVE = 1;
const SURFACE_MOST = 2;
const SURFACE_USABLE = 3;
const SURFACE_PER_MM = 4;
const SORPTION = 5;
const LATE_SHARE = 6;
const BODY_MOST = 7;
const BODY_USABLE = 8;
const WALL_PER_MM = 9;
const THIRST_PER_MM = 10;
const PER_SURFACE_USABLE = 11;
const PER_BODY_USABLE = 12;
const RISE_PER_SURFACE = 13;
const RISE_PER_BODY = 14;
const ROW = 15;

const NO_ACCOUNT = openAccount(0);

/** Stands in for a store that is nothing where one must divide by it. */
const LEAST_ML = 1e-6;

/** What `lose` reads, one row a particle. */
export function lossRows(tank: TankColumns, over?: Float64Array): Float64Array {
  const rows = over?.length === ROW * tank.size ? over : new Float64Array(ROW * tank.size);
  for (let k = 0; k < tank.size; k++) {
    const row = k * ROW;
    const easyFrac = 1 - tank.depletionFrac[k]!;
    const surfaceMost = tank.surfaceMostMl[k]!;
    // Beyond this a thimble of a surface would give, within the hour, more than it holds.
    const sorption = Math.min(tank.sorptionMl2PerH[k]!, 0.75 * surfaceMost * surfaceMost);
    rows[row + CAPACITY] = tank.capacityMl[k]!;
    rows[row + WET_ABOVE] = tank.wetAboveMl[k]!;
    rows[row + SURFACE_MOST] = surfaceMost;
    rows[row + SURFACE_USABLE] = tank.surfaceUsableMl[k]!;
    rows[row + SURFACE_PER_MM] = tank.surfaceMlPerMm[k]!;
    rows[row + SORPTION] = sorption;
    // Where the falling stage bends both forms give the same, so drying never jumps.
    rows[row + LATE_SHARE] = Math.sqrt(1 + (4 * sorption) / (surfaceMost * surfaceMost)) - 1;
    // What rises from a full body to a dry surface is what the surface would draw when its last water goes, but in an
    // hour never more than makes both equally dry: in a thimble of a pot it would overshoot and dry the body below air.
    const evensOut = 1 / (1 / surfaceMost + 1 / tank.bodyMostMl[k]!);
    const rise = Math.min(sorption / (2 * surfaceMost), evensOut);
    rows[row + RISE_PER_SURFACE] = rise / surfaceMost;
    rows[row + RISE_PER_BODY] = rise / tank.bodyMostMl[k]!;
    rows[row + BODY_MOST] = tank.bodyMostMl[k]!;
    rows[row + BODY_USABLE] = tank.bodyUsableMl[k]!;
    rows[row + WALL_PER_MM] = tank.wallPerMm[k]!;
    rows[row + THIRST_PER_MM] = tank.thirstMlPerMm[k]!;
    rows[row + PER_SURFACE_USABLE] = 1 / Math.max(LEAST_ML, easyFrac * tank.surfaceUsableMl[k]!);
    rows[row + PER_BODY_USABLE] = 1 / Math.max(LEAST_ML, easyFrac * tank.bodyUsableMl[k]!);
  }
  return rows;
}

/** Another thirst in rows already laid out. */
export function setThirstRows(rows: Float64Array, thirstMlPerMm: Float64Array): void {
  for (let k = 0; k < thirstMlPerMm.length; k++) rows[k * ROW + THIRST_PER_MM] = thirstMlPerMm[k]!;
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
  const { size, rows, surfaceMl, bodyMl, saucerMl, surfaceRootsFrac } = tank;
  const { coverBase, coverPerMl } = tank;
  const { evaporatedMl, wallLossMl, transpiredMl } = tank.account ?? NO_ACCOUNT;
  const counts = tank.account !== null;
  const { et0Mm, stride, at, out, waterMl, wetBase, drainedMl, tells } = step;
  const covered = coverBase !== 1;
  const porous = tank.wallPerMm[0]! > 0;
  // Most pots have air at the base in most hours whatever they hold; then nothing need be asked particle by particle.
  const mayStand = step.tookIn || tank.saucerMostMl > 0 || tank.wetAboveMl[0]! < Number.POSITIVE_INFINITY;
  if (tells && !mayStand) wetBase.fill(0, out, out + size);
  for (let k = 0; k < size; k++) {
    const row = k * ROW;
    const et0 = et0Mm[at + k * stride]!;
    let top = surfaceMl[k]!;
    let body = bodyMl[k]!;

    let demand = et0 * rows[row + SURFACE_PER_MM]!;
    if (covered) demand /= coverBase + coverPerMl * demand;
    const most = rows[row + SURFACE_MOST]!;
    const supply =
      top + top < most
        ? Math.sqrt(top * top + rows[row + SORPTION]!) - top
        : rows[row + LATE_SHARE]! * (most - top);
    const dried = Math.min(supply, demand);
    top += dried;

    const wall = porous ? et0 * rows[row + WALL_PER_MM]! * (rows[row + BODY_MOST]! - body) : 0;
    body += wall;

    const thirst = et0 * rows[row + THIRST_PER_MM]!;
    const topEase = (rows[row + SURFACE_USABLE]! - top) * rows[row + PER_SURFACE_USABLE]!;
    const fromTop = thirst * surfaceRootsFrac * Math.max(0, Math.min(1, topEase));
    const bodyEase = (rows[row + BODY_USABLE]! - body) * rows[row + PER_BODY_USABLE]!;
    const fromBody = (thirst - fromTop) * Math.max(0, Math.min(1, bodyEase));
    top += fromTop;
    body += fromBody;

    const rise = top * rows[row + RISE_PER_SURFACE]! - body * rows[row + RISE_PER_BODY]!;
    top -= rise;
    body += rise;

    surfaceMl[k] = top;
    bodyMl[k] = body;
    if (counts) {
      evaporatedMl[k]! += dried;
      wallLossMl[k]! += wall;
      transpiredMl[k]! += fromTop + fromBody;
    }
    if (!tells) continue;
    const water = rows[row + CAPACITY]! - top - body;
    waterMl[out + k] = water;
    if (!mayStand) continue;
    wetBase[out + k] = water > rows[row + WET_ABOVE]! || drainedMl[out + k]! > 0 || saucerMl[k]! > 0 ? 1 : 0;
  }
}
