import type { MixInVessel } from "../../mix/mix-in-vessel.ts";
import { canopyAreaCm2 } from "../../plant/canopy.ts";
import type { GroupValues } from "../../plant/group.ts";
import type { Particles } from "../particles.ts";
import type { Vessel } from "../vessel.ts";
import { mixDepthCm } from "../vessel-shape.ts";
import { mlFromMm } from "../water-units.ts";
import { coverOf } from "./cover.ts";
import { lossRows, setThirstRows } from "./lose.ts";
import { sorptivityMmPerSqrtDay } from "./sorptivity.ts";
import type { Account, Tank } from "./tank.ts";

/** What a tank is made from, the particles apart. */
export interface TankPlan {
  readonly inVessel: MixInVessel;
  readonly vessel: Vessel;
  readonly values: GroupValues;
  readonly canopyWidthCm: number;
  /** Content, as a share of capacity, above which the base counts as without air; Infinity for never at rest. */
  readonly wetAboveFrac: number;
  /** Share of the plant that is at rest. */
  readonly restingShareFrac: number;
  /** Share of its roots that the plant has. */
  readonly rootsShareFrac: number;
}

/** Depth of the layer that evaporates from the top, cm, and the most of a shallow pot that it makes up. Chosen by us. */
const SURFACE_CM = 5;
const SURFACE_MOST_SHARE = 0.5;
/** Roots are fewer in the hot, dry top than its share of the mix. Chosen by us. */
const SURFACE_ROOTS = 0.6;
/** Mix dries in air to this share of its volume. Chosen by us within 0.02 to 0.05. */
const AIR_DRY_FRAC = 0.03;
/** Wet bare mix against reference: FAO-56's greatest coefficient for surfaces wetted every day or two. [FAO56 ch. 7] */
const WET_SURFACE_COEFFICIENT = 1.1;
/** What a canopy as wide as the pot keeps from the surface. Chosen by us. */
const CANOPY_SHADE = 0.6;
/**
 * Wall evaporation against reference on the wall's own area while the mix behind it is wet. Middle of 0.3 to 1.0:
 * clay walls let through more than air takes [SIYAL2016], and air takes 1.3 to 3.8 mm a day indoors [MITTAL2006].
 */
const WALL_COEFFICIENT = 0.5;
/** Canopies wider than the pot shed part of their rain into it. [MILLION2015: 1 to 4 times; low end chosen] */
const CATCH_PER_CANOPY = 0.25;
const CATCH_MOST = 2;
/** First watering of mix that sheds water falls short by this share of the volume. [BARTLEY2023] */
const SHED_SHORT_FRAC = 0.2;
/** Wherever a plant slows down, it is somewhere between hardly watered and nearly dry. Chosen by us. */
const DEPLETION_BOUNDS = [0.1, 0.9] as const;
/** In one hour no loss takes more than this share of a store for each mm of ET0, or it would overshoot. */
const SHARE_PER_MM = 0.6;

/**
 * The tank of one pot; its state columns are the particles' own, so running it moves them on.
 *
 * @param over  a tank as large that nobody reads any more, to be written over; made anew when left out
 */
export function tankOf(
  plan: TankPlan,
  particles: Particles,
  account: Account | null = null,
  over: Tank | null = null,
): Tank {
  const { hold } = plan.inVessel;
  const { size, capacityFactor, surfaceFactor } = particles;
  const block = over?.size === size && over.block ? over.block : columnsFor(size);
  let next = 0;
  const column = () => block[next++]!;
  const topShare = Math.min(SURFACE_MOST_SHARE, SURFACE_CM / mixDepthCm(plan.vessel));
  const airDryMl = Math.min(hold.unusableMl, AIR_DRY_FRAC * hold.volumeMl);
  const bodyMostMl = times(capacityFactor, (1 - topShare) * (hold.capacityMl - airDryMl), column());
  const bodyUsableMl = times(capacityFactor, (1 - topShare) * hold.usableMl, column());
  const sorptionMl2PerH = times(surfaceFactor, sorptionMl2PerHOf(plan), column());
  for (let k = 0; k < size; k++) sorptionMl2PerH[k]! *= surfaceFactor[k]!;
  const depletionFrac = depletionColumn(plan, { particles, into: column() });
  const columns = {
    size,
    capacityMl: times(capacityFactor, hold.capacityMl, column()),
    wetAboveMl: times(capacityFactor, plan.wetAboveFrac * hold.capacityMl, column()),
    surfaceMostMl: times(capacityFactor, topShare * (hold.capacityMl - airDryMl), column()),
    surfaceUsableMl: times(capacityFactor, topShare * hold.usableMl, column()),
    surfaceMlPerMm: times(surfaceFactor, surfaceDemandMl(plan), column()),
    sorptionMl2PerH,
    bodyMostMl,
    bodyUsableMl,
    wallPerMm: wallColumn(plan, { particles, bodyMostMl, into: column() }),
    thirstMlPerMm: thirstColumn(plan, { particles, bodyUsableMl, depletionFrac, into: column() }),
    depletionFrac,
    surfaceRootsFrac: SURFACE_ROOTS * topShare,
    ...intake(plan, particles, column),
    ...coverOf(plan.vessel.topDressingCm ?? 0, hold.surfaceAreaCm2),
    surfaceMl: particles.surfaceMl,
    bodyMl: particles.bodyMl,
    saucerMl: particles.saucerMl,
  };
  return { ...columns, rows: lossRows(columns, over?.rows), account, block };
}

const COLUMN_COUNT = 14;

/** Columns of one block: a block each would cost more than all that is reckoned in them. */
function columnsFor(size: number): Float64Array[] {
  const { BYTES_PER_ELEMENT } = Float64Array;
  const block = new ArrayBuffer(COLUMN_COUNT * size * BYTES_PER_ELEMENT);
  return Array.from(
    { length: COLUMN_COUNT },
    (_, i) => new Float64Array(block, i * size * BYTES_PER_ELEMENT, size),
  );
}

/** Puts a tank under another rest or gives its plant other roots, in place: only the demand differs. */
export function setThirst(tank: Tank, plan: TankPlan, particles: Particles): void {
  const { bodyUsableMl, depletionFrac, thirstMlPerMm: into } = tank;
  thirstColumn(plan, { particles, bodyUsableMl, depletionFrac, into });
  setThirstRows(tank.rows, tank.thirstMlPerMm);
}

function sorptionMl2PerHOf({ inVessel }: TankPlan): number {
  return mlFromMm(sorptivityMmPerSqrtDay(inVessel), inVessel.hold.surfaceAreaCm2) ** 2 / 24;
}

function surfaceDemandMl(plan: TankPlan): number {
  const { surfaceAreaCm2 } = plan.inVessel.hold;
  const shade = 1 - CANOPY_SHADE * Math.min(1, canopyAreaCm2(plan) / surfaceAreaCm2);
  return WET_SURFACE_COEFFICIENT * shade * mlFromMm(1, surfaceAreaCm2);
}

function thirstColumn(
  plan: TankPlan,
  of: {
    particles: Particles;
    bodyUsableMl: Float64Array;
    depletionFrac: Float64Array;
    into: Float64Array;
  },
): Float64Array {
  const { basalCoefficient, restCoefficient } = plan.values;
  const resting = plan.restingShareFrac;
  const coefficient = basalCoefficient * (1 - resting) + restCoefficient * resting;
  const thirst = times(
    of.particles.thirstFactor,
    coefficient * plan.rootsShareFrac * mlFromMm(1, canopyAreaCm2(plan)),
    of.into,
  );
  for (let k = 0; k < thirst.length; k++) {
    const easyFrac = 1 - of.depletionFrac[k]!;
    thirst[k] = Math.min(thirst[k]!, SHARE_PER_MM * easyFrac * of.bodyUsableMl[k]!);
  }
  return thirst;
}

function wallColumn(
  plan: TankPlan,
  of: { particles: Particles; bodyMostMl: Float64Array; into: Float64Array },
): Float64Array {
  const { material } = plan.vessel;
  const porous = material === "unglazed" || material === "fabric";
  const demandMl = porous ? WALL_COEFFICIENT * mlFromMm(1, plan.inVessel.hold.wallAreaCm2) : 0;
  const share = times(of.particles.wallFactor, demandMl, of.into);
  for (let k = 0; k < share.length; k++) share[k] = Math.min(SHARE_PER_MM, share[k]! / of.bodyMostMl[k]!);
  return share;
}

function intake(plan: TankPlan, { catchFactor, capacityFactor }: Particles, column: () => Float64Array) {
  const { hold, repellentBelowFrac } = plan.inVessel;
  const wider = Math.max(0, canopyAreaCm2(plan) / hold.rimAreaCm2 - 1);
  const catchMl = mlFromMm(Math.min(CATCH_MOST, 1 + CATCH_PER_CANOPY * wider), hold.rimAreaCm2);
  const shedsBelowMl = Math.min((repellentBelowFrac ?? 0) * hold.volumeMl, hold.capacityMl);
  const shedsMissingMl = Math.min(SHED_SHORT_FRAC * hold.volumeMl, hold.capacityMl - shedsBelowMl);
  return {
    catchMlPerMm: times(catchFactor, catchMl, column()),
    saucerMostMl: hold.saucerMl,
    shedsBelowMl: times(capacityFactor, shedsBelowMl, column()),
    shedsMissingMl: times(capacityFactor, shedsMissingMl, column()),
  };
}

function times(column: Float64Array, by: number, into: Float64Array): Float64Array {
  for (let k = 0; k < column.length; k++) into[k] = column[k]! * by;
  return into;
}

function depletionColumn(plan: TankPlan, of: { particles: Particles; into: Float64Array }): Float64Array {
  const [least, most] = DEPLETION_BOUNDS;
  const { depletionOff } = of.particles;
  for (let k = 0; k < of.into.length; k++) {
    const frac = plan.values.depletionFrac + (depletionOff?.[k] ?? 0);
    of.into[k] = Math.min(most, Math.max(least, frac));
  }
  return of.into;
}
