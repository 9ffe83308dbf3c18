import type { MixInVessel } from "../../mix/mix-in-vessel.ts";
import { canopyAreaCm2 } from "../../plant/canopy.ts";
import type { GroupValues } from "../../plant/group.ts";
import type { Particles } from "../particles.ts";
import type { Vessel } from "../vessel.ts";
import { mixDepthCm } from "../vessel-shape.ts";
import { mlFromMm } from "../water-units.ts";
import { coverOf } from "./cover.ts";
import { lossRows } from "./lose.ts";
import { sorptivityMmPerSqrtDay } from "./sorptivity.ts";
import type { Tank } from "./tank.ts";

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
/** In one hour no loss takes more than this share of a store for each mm of ET0, or it would overshoot. */
const SHARE_PER_MM = 0.6;
/** Stands in for a store that is nothing where one must divide by it. */
const LEAST_ML = 1e-6;

/** The tank of one pot; its state columns are the particles' own, so running it moves them on. */
export function tankOf(plan: TankPlan, particles: Particles): Tank {
  const { hold } = plan.inVessel;
  const { size, capacityFactor } = particles;
  const scaled = (ml: number) => capacityFactor.map((factor) => factor * ml);
  const topShare = Math.min(SURFACE_MOST_SHARE, SURFACE_CM / mixDepthCm(plan.vessel));
  const airDryMl = Math.min(hold.unusableMl, AIR_DRY_FRAC * hold.volumeMl);
  const stores = {
    surfaceMostMl: scaled(topShare * (hold.capacityMl - airDryMl)),
    bodyMostMl: scaled((1 - topShare) * (hold.capacityMl - airDryMl)),
    surfaceUsableMl: scaled(topShare * hold.usableMl),
    bodyUsableMl: scaled((1 - topShare) * hold.usableMl),
  };
  const columns = {
    size,
    capacityMl: scaled(hold.capacityMl),
    wetAboveMl: scaled(plan.wetAboveFrac * hold.capacityMl),
    ...stores,
    ...surfaceColumns(plan, { particles, surfaceMostMl: stores.surfaceMostMl }),
    ...plantColumns(plan, { particles, ...stores, topShare }),
    wallPerMm: wallColumn(plan, particles, stores.bodyMostMl),
    ...intakeColumns(plan, particles),
    surfaceMl: particles.surfaceMl,
    bodyMl: particles.bodyMl,
    saucerMl: particles.saucerMl,
    enteredMl: new Float64Array(size),
    drainedMl: new Float64Array(size),
    evaporatedMl: new Float64Array(size),
    wallLossMl: new Float64Array(size),
    transpiredMl: new Float64Array(size),
  };
  return { ...columns, rows: lossRows(columns) };
}

function surfaceColumns(plan: TankPlan, input: { particles: Particles; surfaceMostMl: Float64Array }) {
  const { hold } = plan.inVessel;
  const { surfaceMostMl, particles } = input;
  const sorptionMl2 = mlFromMm(sorptivityMmPerSqrtDay(plan.inVessel), hold.surfaceAreaCm2) ** 2 / 24;
  const shade = 1 - CANOPY_SHADE * Math.min(1, canopyAreaCm2(plan) / hold.surfaceAreaCm2);
  const demandMl = WET_SURFACE_COEFFICIENT * shade * mlFromMm(1, hold.surfaceAreaCm2);
  const sorptionMl2PerH = particles.surfaceFactor.map((factor) => sorptionMl2 * factor * factor);
  return {
    surfaceMlPerMm: particles.surfaceFactor.map((factor) => demandMl * factor),
    sorptionMl2PerH,
    // Where the falling stage bends both forms give the same, so drying never jumps.
    lateShare: surfaceMostMl.map((most, k) => Math.sqrt(1 + (4 * sorptionMl2PerH[k]!) / (most * most)) - 1),
    riseMlPerH: surfaceMostMl.map((most, k) => sorptionMl2PerH[k]! / (2 * most)),
    perSurfaceMost: surfaceMostMl.map((most) => 1 / most),
    ...coverOf(plan.vessel.topDressingCm ?? 0, { size: particles.size, surfaceAreaCm2: hold.surfaceAreaCm2 }),
  };
}

function plantColumns(
  plan: TankPlan,
  input: {
    particles: Particles;
    surfaceUsableMl: Float64Array;
    bodyUsableMl: Float64Array;
    bodyMostMl: Float64Array;
    topShare: number;
  },
) {
  const { basalCoefficient, restCoefficient, depletionFrac } = plan.values;
  const resting = plan.restingShareFrac;
  const coefficient = basalCoefficient * (1 - resting) + restCoefficient * resting;
  const demandMl = coefficient * plan.rootsShareFrac * mlFromMm(1, canopyAreaCm2(plan));
  const stressed = 1 - depletionFrac;
  return {
    thirstMlPerMm: input.particles.thirstFactor.map((factor, k) =>
      Math.min(demandMl * factor, SHARE_PER_MM * stressed * input.bodyUsableMl[k]!),
    ),
    perSurfaceUsable: input.surfaceUsableMl.map((usable) => 1 / Math.max(LEAST_ML, stressed * usable)),
    perBodyUsable: input.bodyUsableMl.map((usable) => 1 / Math.max(LEAST_ML, stressed * usable)),
    perBodyMost: input.bodyMostMl.map((most) => 1 / most),
    surfaceRootsFrac: SURFACE_ROOTS * input.topShare,
  };
}

function wallColumn(plan: TankPlan, particles: Particles, bodyMostMl: Float64Array): Float64Array {
  const { material } = plan.vessel;
  const porous = material === "unglazed" || material === "fabric";
  const demandMl = porous ? WALL_COEFFICIENT * mlFromMm(1, plan.inVessel.hold.wallAreaCm2) : 0;
  return particles.wallFactor.map((factor, k) =>
    Math.min(SHARE_PER_MM, (demandMl * factor) / bodyMostMl[k]!),
  );
}

function intakeColumns(plan: TankPlan, particles: Particles) {
  const { hold, repellentBelowFrac } = plan.inVessel;
  const wider = Math.max(0, canopyAreaCm2(plan) / hold.rimAreaCm2 - 1);
  const catchMl = mlFromMm(Math.min(CATCH_MOST, 1 + CATCH_PER_CANOPY * wider), hold.rimAreaCm2);
  const shedsBelowMl = Math.min((repellentBelowFrac ?? 0) * hold.volumeMl, hold.capacityMl);
  const shedsMissingMl = Math.min(SHED_SHORT_FRAC * hold.volumeMl, hold.capacityMl - shedsBelowMl);
  return {
    catchMlPerMm: particles.catchFactor.map((factor) => catchMl * factor),
    saucerMostMl: hold.saucerMl,
    shedsBelowMl: particles.capacityFactor.map((factor) => shedsBelowMl * factor),
    shedsMissingMl: particles.capacityFactor.map((factor) => shedsMissingMl * factor),
  };
}
