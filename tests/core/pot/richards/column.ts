import type { Soil } from "./soil.ts";

/** What happens at an end of the column. Fluxes count downwards. */
export type Top =
  | { readonly kind: "head"; readonly headCm: number }
  | { readonly kind: "closed" }
  /** Evaporation at a demand until the surface has dried to a head. */
  | { readonly kind: "evaporating"; readonly demand: number; readonly driestHeadCm: number };
export type Bottom =
  | { readonly kind: "head"; readonly headCm: number }
  | { readonly kind: "closed" }
  /** Open to the air: water leaves only at zero head. */
  | { readonly kind: "dripping" };

export interface Column {
  readonly soil: Soil;
  /** Thickness of the cells from the top down, cm. */
  readonly cellCm: Float64Array;
  readonly headCm: Float64Array;
  readonly top: Top;
  readonly bottom: Bottom;
}

export interface ColumnRun {
  readonly headCm: Float64Array;
  /** Through the top (evaporation negative) and out of the bottom, cm. */
  readonly throughTopCm: number;
  readonly throughBottomCm: number;
  readonly storedBeforeCm: number;
  readonly storedAfterCm: number;
}

export interface Steps {
  readonly until: number;
  readonly first: number;
  readonly longest: number;
}

/**
 * One-dimensional Richards equation in mixed form by modified Picard iteration, which keeps the mass whatever the step.
 * [CELIA1990 eq. 17] Cell-centred differences, backward in time, mean conductivity between cells. Independent of the
 * project's own water functions.
 */
export function runColumn(column: Column, steps: Steps): ColumnRun {
  let headCm: Float64Array = column.headCm.slice();
  const storedBeforeCm = stored(column, headCm);
  let throughTopCm = 0;
  let throughBottomCm = 0;
  let time = 0;
  let step = steps.first;
  while (time < steps.until - 1e-12) {
    const dt = Math.min(step, steps.until - time);
    const tried = oneStep({ ...column, headCm }, dt);
    if (tried === null) {
      step = dt / 3;
      if (step < 1e-12) throw new Error(`no convergence at ${time}`);
      continue;
    }
    headCm = tried.headCm;
    throughTopCm += tried.topFlux * dt;
    throughBottomCm += tried.bottomFlux * dt;
    time += dt;
    step = Math.min(steps.longest, tried.iterations <= 5 ? dt * 1.25 : tried.iterations > 12 ? dt * 0.7 : dt);
  }
  return { headCm, throughTopCm, throughBottomCm, storedBeforeCm, storedAfterCm: stored(column, headCm) };
}

function stored({ soil, cellCm }: Column, headCm: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < cellCm.length; i++) sum += cellCm[i]! * soil.waterFrac(headCm[i]!);
  return sum;
}

interface Stepped {
  readonly headCm: Float64Array;
  readonly topFlux: number;
  readonly bottomFlux: number;
  readonly iterations: number;
}

const MOST_ITERATIONS = 40;

function oneStep(column: Column, dt: number): Stepped | null {
  const { soil, cellCm, headCm: before } = column;
  const count = cellCm.length;
  const waterBefore = before.map(soil.waterFrac);
  let head: Float64Array = before.slice();
  for (let iteration = 1; iteration <= MOST_ITERATIONS; iteration++) {
    const conductivity = head.map(soil.conductivity);
    const ends = endsOf(column, head, conductivity);
    const lower = new Float64Array(count);
    const diagonal = new Float64Array(count);
    const upper = new Float64Array(count);
    const right = new Float64Array(count);
    for (let i = 0; i < count; i++) {
      const capacity = soil.capacityPerCm(head[i]!);
      diagonal[i]! += (cellCm[i]! / dt) * capacity;
      right[i]! += (cellCm[i]! / dt) * (capacity * head[i]! - soil.waterFrac(head[i]!) + waterBefore[i]!);
      if (i + 1 === count) continue;
      const link = (conductivity[i]! + conductivity[i + 1]!) / 2;
      const conductance = link / ((cellCm[i]! + cellCm[i + 1]!) / 2);
      diagonal[i]! += conductance;
      upper[i]! -= conductance;
      right[i]! -= link;
      diagonal[i + 1]! += conductance;
      lower[i + 1]! -= conductance;
      right[i + 1]! += link;
    }
    diagonal[0]! += ends.top.perHead;
    right[0]! += ends.top.constant;
    diagonal[count - 1]! += ends.bottom.perHead;
    right[count - 1]! -= ends.bottom.constant;
    const next = solve({ lower, diagonal, upper, right });
    if (!next.every(Number.isFinite)) return null;
    const waterMove = next.reduce(
      (most, h, i) => Math.max(most, Math.abs(soil.waterFrac(h) - soil.waterFrac(head[i]!))),
      0,
    );
    const headMove = next.reduce(
      (most, h, i) => Math.max(most, Math.abs(h - head[i]!) / (1 + Math.abs(h))),
      0,
    );
    const fluxes = {
      topFlux: ends.top.constant - ends.top.perHead * next[0]!,
      bottomFlux: ends.bottom.constant + ends.bottom.perHead * next[count - 1]!,
    };
    head = next;
    if (waterMove < 1e-9 && headMove < 1e-7) return { headCm: head, ...fluxes, iterations: iteration };
  }
  return null;
}

/** Fluxes at the ends as constant minus (top) or plus (bottom) a part that goes with the cell's head. */
function endsOf(column: Column, head: Float64Array, conductivity: Float64Array) {
  const { soil, cellCm, top, bottom } = column;
  const count = cellCm.length;
  const none = { perHead: 0, constant: 0 };
  const halfTop = cellCm[0]! / 2;
  const toHead = (headCm: number) => {
    const link = (soil.conductivity(headCm) + conductivity[0]!) / 2;
    return { perHead: link / halfTop, constant: link * (headCm / halfTop + 1) };
  };
  let atTop = none;
  if (top.kind === "head") atTop = toHead(top.headCm);
  if (top.kind === "evaporating") {
    const limit = toHead(top.driestHeadCm);
    const most = limit.constant - limit.perHead * head[0]!;
    atTop = -top.demand > most ? { perHead: 0, constant: -top.demand } : limit;
  }
  const halfBottom = cellCm[count - 1]! / 2;
  const fromHead = (headCm: number) => {
    const link = (soil.conductivity(headCm) + conductivity[count - 1]!) / 2;
    return { perHead: link / halfBottom, constant: link * (1 - headCm / halfBottom) };
  };
  let atBottom = none;
  if (bottom.kind === "head") atBottom = fromHead(bottom.headCm);
  if (bottom.kind === "dripping") {
    const open = fromHead(0);
    if (open.constant + open.perHead * head[count - 1]! > 0) atBottom = open;
  }
  return { top: atTop, bottom: atBottom };
}

/** Tridiagonal system by elimination and back-substitution. */
function solve(system: {
  lower: Float64Array;
  diagonal: Float64Array;
  upper: Float64Array;
  right: Float64Array;
}): Float64Array {
  const { lower, diagonal, upper, right } = system;
  const count = right.length;
  for (let i = 1; i < count; i++) {
    const factor = lower[i]! / diagonal[i - 1]!;
    diagonal[i]! -= factor * upper[i - 1]!;
    right[i]! -= factor * right[i - 1]!;
  }
  const solved = new Float64Array(count);
  for (let i = count - 1; i >= 0; i--) {
    solved[i] = (right[i]! - (i + 1 < count ? upper[i]! * solved[i + 1]! : 0)) / diagonal[i]!;
  }
  return solved;
}

/** Equal cells. */
export function evenCells(depthCm: number, cellCm: number): Float64Array {
  return new Float64Array(Math.round(depthCm / cellCm)).fill(cellCm);
}

/** Cells that grow from the top down by a factor, the last cut to the depth. */
export function growingCells(
  depthCm: number,
  first: { cellCm: number; growth: number; longestCm: number },
): Float64Array {
  const cells: number[] = [];
  let left = depthCm;
  let cell = first.cellCm;
  while (left > 1e-9) {
    const used = Math.min(cell, left);
    cells.push(used);
    left -= used;
    cell = Math.min(first.longestCm, cell * first.growth);
  }
  return Float64Array.from(cells);
}

/** Head at a depth, straight between cell centres. */
export function headAt(column: Pick<Column, "cellCm">, headCm: Float64Array, depthCm: number): number {
  let centre = column.cellCm[0]! / 2;
  for (let i = 0; i + 1 < headCm.length; i++) {
    const next = centre + (column.cellCm[i]! + column.cellCm[i + 1]!) / 2;
    if (depthCm <= next) {
      const share = Math.max(0, (depthCm - centre) / (next - centre));
      return headCm[i]! + share * (headCm[i + 1]! - headCm[i]!);
    }
    centre = next;
  }
  return headCm[headCm.length - 1]!;
}
