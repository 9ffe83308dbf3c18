import type { RetentionCurve } from "../../../../core/mix/curve.ts";
import { runHours } from "../../../../core/pot/balance/run-hours.ts";
import { contentMl } from "../../../../core/pot/balance/tank.ts";
import { volumeMlBetween } from "../../../../core/pot/vessel-shape.ts";
import { mmFromMl } from "../../../../core/pot/water-units.ts";
import { countedTank, forcing, groupValues, inVesselOf, tankPlan, vessel } from "../build-pot.ts";
import { growingCells, runColumn } from "./column.ts";
import { vanGenuchten } from "./soil.ts";

/** A material as both see it: the tank knows the curve, the column also how it conducts. */
export interface Material {
  readonly name: string;
  readonly curve: RetentionCurve;
  readonly conductivityCmPerDay: number;
}

/** Curves fitted to published points of each material; conductivities as reported for such media, cm a day. */
export const MATERIALS: readonly Material[] = [
  {
    name: "peat",
    curve: { residualFrac: 0.206, saturatedFrac: 0.93, alphaPerCm: 0.075, n: 2.03 },
    conductivityCmPerDay: 4320,
  },
  {
    name: "peat mix",
    curve: { residualFrac: 0.108, saturatedFrac: 0.875, alphaPerCm: 0.162, n: 1.53 },
    conductivityCmPerDay: 8640,
  },
  {
    name: "coco peat",
    curve: { residualFrac: 0.273, saturatedFrac: 0.93, alphaPerCm: 0.143, n: 1.95 },
    conductivityCmPerDay: 8640,
  },
  {
    name: "pumice",
    curve: { residualFrac: 0.13, saturatedFrac: 0.53, alphaPerCm: 2.58, n: 2.5 },
    conductivityCmPerDay: 43_200,
  },
  {
    name: "loam",
    curve: { residualFrac: 0.078, saturatedFrac: 0.43, alphaPerCm: 0.036, n: 1.56 },
    conductivityCmPerDay: 24.96,
  },
];

export const DEPTHS_CM = [10, 20] as const;
export const DAYS = [1, 2, 4, 8, 16] as const;
const DEMAND_MM_PER_DAY = 5;
/** Air-dry at the surface. */
const DRIEST_CM = -100_000;

export interface Row {
  readonly name: string;
  readonly depthCm: number;
  /** Drained content as a share of volume. */
  readonly drainedFrac: { readonly tank: number; readonly column: number };
  /** Evaporated after each of DAYS, mm. */
  readonly lostMm: readonly { readonly tank: number; readonly column: number }[];
}

/** Tank and column through draining and then drying of a bare, closed cylinder. */
export function tankBesideColumn(material: Material, depthCm: number): Row {
  const column = columnCourse(material, depthCm);
  const tank = tankCourse(material, depthCm);
  return {
    name: material.name,
    depthCm,
    drainedFrac: { tank: tank.drainedFrac, column: column.drainedFrac },
    lostMm: DAYS.map((_, i) => ({ tank: tank.lostMm[i]!, column: column.lostMm[i]! })),
  };
}

function columnCourse({ curve, conductivityCmPerDay }: Material, depthCm: number) {
  const soil = vanGenuchten({
    residual: curve.residualFrac,
    saturated: curve.saturatedFrac,
    alphaPerCm: curve.alphaPerCm,
    n: curve.n,
    saturatedConductivity: conductivityCmPerDay,
  });
  const cellCm = growingCells(depthCm, { cellCm: 0.05, growth: 1.25, longestCm: 1 });
  const closed = { kind: "closed" } as const;
  const full = new Float64Array(cellCm.length).fill(-1e-3);
  const drained = runColumn(
    { soil, cellCm, headCm: full, top: closed, bottom: { kind: "dripping" } },
    { until: 1, first: 1e-9, longest: 0.1 },
  );
  const top = { kind: "evaporating", demand: DEMAND_MM_PER_DAY / 10, driestHeadCm: DRIEST_CM } as const;
  const lostMm: number[] = [];
  let headCm = drained.headCm;
  let before = 0;
  for (const day of DAYS) {
    const run = runColumn(
      { soil, cellCm, headCm, top, bottom: closed },
      { until: day - before, first: 1e-7, longest: 0.25 },
    );
    headCm = run.headCm;
    lostMm.push((lostMm.at(-1) ?? 0) - 10 * run.throughTopCm);
    before = day;
  }
  return { drainedFrac: drained.storedAfterCm / depthCm, lostMm };
}

function tankCourse(material: Material, depthCm: number) {
  const of = vessel({ topCm: 15, baseCm: 15, heightCm: depthCm });
  const mix = {
    id: material.name,
    name: material.name,
    recipe: { kind: "curve", curve: material.curve, dryDensityKgPerL: 0.3 },
  } as const;
  const inVessel = inVesselOf(mix, of);
  const values = groupValues("cactus-desert");
  const plan = tankPlan({ vessel: of, inVessel, values, canopyWidthCm: 0.01, wetAboveFrac: 2 });
  const tank = countedTank(plan, oneCertain());
  const volumeMl = volumeMlBetween(of, { fromCm: 0, toCm: depthCm });
  const drainedFrac = contentMl(tank, 0) / volumeMl;
  // The tank's own coefficient for a wet surface is taken out, so that both see the same demand.
  const et0Mm = DEMAND_MM_PER_DAY / 24 / (tank.surfaceMlPerMm[0]! / (inVessel.hold.surfaceAreaCm2 / 10));
  const lostMm: number[] = [];
  let before = 0;
  for (const day of DAYS) {
    const hours = (day - before) * 24;
    const weather = forcing({ hourCount: hours, et0Mm: () => et0Mm });
    runHours(tank, { forcing: weather, fromHour: 0, toHour: hours, pourMl: 0 }, null);
    lostMm.push(mmFromMl({ waterMl: tank.account.evaporatedMl[0]!, areaCm2: inVessel.hold.surfaceAreaCm2 }));
    before = day;
  }
  return { drainedFrac, lostMm };
}

/** One particle just as the library has it. */
function oneCertain() {
  const one = () => Float64Array.of(1);
  const none = () => Float64Array.of(0);
  return {
    size: 1,
    weightFrac: one(),
    capacityFactor: one(),
    thirstFactor: one(),
    wallFactor: one(),
    catchFactor: one(),
    surfaceFactor: one(),
    tareKg: none(),
    surfaceMl: none(),
    bodyMl: none(),
    saucerMl: none(),
  };
}

/** The table as lines of text: what the column gives, and the tank less the column. */
export function tableLines(rows: readonly Row[]): string[] {
  const cell = (p: { tank: number; column: number }, digits: number) => {
    const off = p.tank - p.column;
    return `${p.column.toFixed(digits)} ${off < 0 ? "-" : "+"}${Math.abs(off).toFixed(digits)}`.padStart(16);
  };
  const head = `${"column, tank off by".padEnd(20)}${"drained".padStart(16)}${DAYS.map((d) => `mm by day ${d}`.padStart(16)).join("")}`;
  return [
    head,
    ...rows.map(
      (row) =>
        `${`${row.name} ${row.depthCm} cm`.padEnd(20)}${cell(row.drainedFrac, 3)}${row.lostMm.map((p) => cell(p, 1)).join("")}`,
    ),
  ];
}
