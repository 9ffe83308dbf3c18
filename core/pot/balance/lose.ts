import type { Step } from "./step.ts";
import type { Account, Tank, TankColumns } from "./tank.ts";

// Places in a particle's row. One row a particle, because thirteen columns side by side keep the processor busy with
// addresses: this layout runs the loop half as fast again.
const SURFACE_MOST = 0;
const SURFACE_USABLE = 1;
const SURFACE_PER_MM = 2;
const SORPTION = 3;
const LATE_SHARE = 4;
const BODY_MOST = 5;
const BODY_USABLE = 6;
const WALL_PER_MM = 7;
const THIRST_PER_MM = 8;
const PER_SURFACE_USABLE = 9;
const PER_BODY_USABLE = 10;
const RISE_PER_SURFACE = 11;
const RISE_PER_BODY = 12;
const ROW = 13;

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
 * A plan spends a third of its time in this loop, so it is kept bare: where the water went and what the hour looks like
 * are told in loops of their own, and the functions by the particle are small enough to be built into it. They take and
 * give bare numbers because an object by the particle would take longer than all that is reckoned.
 */
export function lose(tank: Tank, step: Step): void {
  if (tank.account !== null) countLosses(tank, step, tank.account);
  const { size, rows, surfaceMl, bodyMl, surfaceRootsFrac, coverBase, coverPerMl } = tank;
  const { et0Mm, stride, at } = step;
  const covered = coverBase !== 1;
  const porous = tank.wallPerMm[0]! > 0;
  for (let k = 0; k < size; k++) {
    const row = k * ROW;
    const et0 = et0Mm[at + k * stride]!;
    let top = surfaceMl[k]!;
    let body = bodyMl[k]!;

    let demand = et0 * rows[row + SURFACE_PER_MM]!;
    if (covered) demand /= coverBase + coverPerMl * demand;
    top += Math.min(supplyMl(rows, row, top), demand);
    if (porous) body += wallLossMl(rows, row, body, et0);
    const thirst = et0 * rows[row + THIRST_PER_MM]!;
    const fromTop = thirst * surfaceRootsFrac * topEaseFrac(rows, row, top);
    const fromBody = (thirst - fromTop) * bodyEaseFrac(rows, row, body);
    top += fromTop;
    body += fromBody;
    const rise = top * rows[row + RISE_PER_SURFACE]! - body * rows[row + RISE_PER_BODY]!;

    surfaceMl[k] = top - rise;
    bodyMl[k] = body + rise;
  }
  if (step.tells) tell(tank, step);
}

/** Enters the hour's losses into the account, by the same steps and before they are taken. */
function countLosses(tank: Tank, { et0Mm, stride, at }: Step, account: Account): void {
  const { rows, coverBase, coverPerMl } = tank;
  for (let k = 0; k < tank.size; k++) {
    const row = k * ROW;
    const et0 = et0Mm[at + k * stride]!;
    const bare = et0 * rows[row + SURFACE_PER_MM]!;
    const dried = Math.min(supplyMl(rows, row, tank.surfaceMl[k]!), bare / (coverBase + coverPerMl * bare));
    const wall = wallLossMl(rows, row, tank.bodyMl[k]!, et0);
    const thirst = et0 * rows[row + THIRST_PER_MM]!;
    const fromTop = thirst * tank.surfaceRootsFrac * topEaseFrac(rows, row, tank.surfaceMl[k]! + dried);
    account.evaporatedMl[k]! += dried;
    account.wallLossMl[k]! += wall;
    account.transpiredMl[k]! +=
      fromTop + (thirst - fromTop) * bodyEaseFrac(rows, row, tank.bodyMl[k]! + wall);
  }
}

/**
 * Most that the surface gives in the hour: the exact hour of d(missing)/dt = S2 / (2 missing) down to half, and of
 * exponential drying of a finite slab beyond. [PHILIP1957, VANDERBORGHT2005 eq. 44-47]
 */
function supplyMl(rows: Float64Array, row: number, topMl: number): number {
  const most = rows[row + SURFACE_MOST]!;
  return topMl + topMl < most
    ? Math.sqrt(topMl * topMl + rows[row + SORPTION]!) - topMl
    : rows[row + LATE_SHARE]! * (most - topMl);
}

function wallLossMl(rows: Float64Array, row: number, bodyMl: number, et0Mm: number): number {
  return et0Mm * rows[row + WALL_PER_MM]! * (rows[row + BODY_MOST]! - bodyMl);
}

/**
 * Share of its thirst that the plant can still draw from the surface. It takes there by its share of roots, and from the
 * body what that leaves, each cut by its own dryness. [FAO56 eq. 84]
 */
function topEaseFrac(rows: Float64Array, row: number, topMl: number): number {
  return within01((rows[row + SURFACE_USABLE]! - topMl) * rows[row + PER_SURFACE_USABLE]!);
}

function bodyEaseFrac(rows: Float64Array, row: number, bodyMl: number): number {
  return within01((rows[row + BODY_USABLE]! - bodyMl) * rows[row + PER_BODY_USABLE]!);
}

/** Compared rather than put through Math.min and Math.max, which also mind not-a-number and the sign of zero. */
function within01(value: number): number {
  if (value < 0) return 0;
  if (value > 1) return 1;
  return value;
}

/** Writes down what the pot holds at the end of the hour and whether its base is without air. */
function tell(tank: Tank, { out, waterMl, wetBase, drainedMl, tookIn }: Step): void {
  const { size, capacityMl, wetAboveMl, surfaceMl, bodyMl, saucerMl, saucerMostMl } = tank;
  for (let k = 0; k < size; k++) waterMl[out + k] = capacityMl[k]! - surfaceMl[k]! - bodyMl[k]!;
  // Most pots have air at the base in most hours whatever they hold; then nothing need be asked particle by particle.
  if (wetAboveMl[0]! < Number.POSITIVE_INFINITY) {
    for (let k = 0; k < size; k++) wetBase[out + k] = waterMl[out + k]! > wetAboveMl[k]! ? 1 : 0;
  } else wetBase.fill(0, out, out + size);
  if (!tookIn && saucerMostMl <= 0) return;
  for (let k = 0; k < size; k++) if (drainedMl[out + k]! > 0 || saucerMl[k]! > 0) wetBase[out + k] = 1;
}
