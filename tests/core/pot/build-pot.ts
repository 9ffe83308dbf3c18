import { componentsById } from "../../../core/mix/library.ts";
import type { Mix } from "../../../core/mix/mix.ts";
import { type MixInVessel, mixInVessel } from "../../../core/mix/mix-in-vessel.ts";
import type { GroupValues } from "../../../core/plant/group.ts";
import { groupsById } from "../../../core/plant/groups.ts";
import { plantMassKg } from "../../../core/plant/plant-mass.ts";
import { type Account, openAccount, type Tank } from "../../../core/pot/balance/tank.ts";
import { type TankPlan, tankOf } from "../../../core/pot/balance/tank-of.ts";
import { drawParticles } from "../../../core/pot/learn/draw-particles.ts";
import type { Particles } from "../../../core/pot/particles.ts";
import type { Vessel } from "../../../core/pot/vessel.ts";
import { wetAboveFrac } from "../../../core/pot/wet-above.ts";
import type { SpotForcing } from "../../../core/site/forcing.ts";
import { HOUR_MS } from "../../../core/weather/weather.ts";

export const GRITTY: Mix = {
  id: "gritty",
  name: "Gritty",
  recipe: {
    kind: "parts",
    parts: [
      { component: "pumice", parts: 2 },
      { component: "coco-peat", parts: 1 },
      { component: "grit", parts: 1 },
    ],
  },
};

export const PEATY: Mix = {
  id: "peaty",
  name: "Peaty",
  recipe: {
    kind: "parts",
    parts: [
      { component: "peat", parts: 3 },
      { component: "perlite", parts: 1 },
    ],
  },
};

export function vessel(changes: Partial<Vessel> = {}): Vessel {
  return { shape: "round", topCm: 20, baseCm: 15, heightCm: 18, material: "plastic", ...changes };
}

export function groupValues(id: string, changes: Partial<GroupValues> = {}): GroupValues {
  const group = groupsById().get(id);
  if (group === undefined) throw new Error(`no group ${id}`);
  return { ...group.values, ...changes };
}

export function inVesselOf(mix: Mix, of: Vessel): MixInVessel {
  const outcome = mixInVessel({ mix, vessel: of, components: componentsById() });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.problems));
  return outcome.value;
}

export function tankPlan(changes: Partial<TankPlan> & { mix?: Mix } = {}): TankPlan {
  const { mix = GRITTY, ...others } = changes;
  const of = others.vessel ?? vessel();
  const inVessel = others.inVessel ?? inVesselOf(mix, of);
  return {
    vessel: of,
    inVessel,
    values: groupValues("desert-rose"),
    canopyWidthCm: 25,
    wetAboveFrac: wetAboveFrac(inVessel, of),
    restingShareFrac: 0,
    rootsShareFrac: 1,
    ...others,
  };
}

export type CountedTank = Tank & { readonly account: Account };

/** A tank that keeps account of its water. */
export function countedTank(plan: TankPlan, particles: Particles): CountedTank {
  const account = openAccount(particles.size);
  return { ...tankOf(plan, particles, account), account };
}

/** A full tank of particles drawn as the library knows them. */
export function drawnTank(plan: TankPlan, draw: { size?: number; seed?: number } = {}): CountedTank {
  const { size = 5, seed = 1 } = draw;
  const plant = { canopyWidthCm: plan.canopyWidthCm, plantHeightCm: 30 };
  const mass = plantMassKg(plant, plan.values);
  const particles = drawParticles({ size, seed, inVessel: plan.inVessel, plantMassKg: mass });
  return countedTank(plan, particles);
}

/** One course of weather from functions of the hour. */
export function forcing(of: {
  hourCount: number;
  et0Mm?: (hour: number) => number;
  rainMm?: (hour: number) => number;
  tempC?: (hour: number) => number;
  startUtcMs?: number;
  spotId?: string;
}): SpotForcing {
  const { hourCount, startUtcMs = Date.UTC(2026, 6, 1), spotId = "terrace" } = of;
  const column = (f: (hour: number) => number) => Float64Array.from({ length: hourCount }, (_, h) => f(h));
  const tempC = column(of.tempC ?? (() => 22));
  return {
    spotId,
    startUtcMs,
    hourCount,
    memberCount: 1,
    et0Mm: column(of.et0Mm ?? sunnyEt0Mm),
    rainMm: column(of.rainMm ?? (() => 0)),
    tempC,
    plantTempC: tempC,
    lightMjPerM2: column(() => 0.8),
    gustMPerS: column(() => 3),
  };
}

/** 5 mm a day between 6 and 18 o'clock. */
export function sunnyEt0Mm(hour: number): number {
  return Math.max(0, Math.sin((((hour % 24) + 0.5 - 6) / 12) * Math.PI)) * 0.6548;
}

export function hoursAfter(startUtcMs: number, hours: number): number {
  return startUtcMs + hours * HOUR_MS;
}
