import type { GroupValues } from "../plant/group.ts";
import { runHours } from "../pot/balance/run-hours.ts";
import { contentMl } from "../pot/balance/tank.ts";
import { tankOf } from "../pot/balance/tank-of.ts";
import type { Particles } from "../pot/particles.ts";
import type { Vessel } from "../pot/vessel.ts";
import type { SpotForcing } from "../site/forcing.ts";
import type { Ranged } from "./component.ts";
import type { MixInVessel } from "./mix-in-vessel.ts";

/** Beyond this a pot is not told to dry by the weather of a week. */
const MOST_DAYS = 60;

/**
 * Days from drained to the next watering at a steady daily demand: the pot's own hourly balance with the demand spread
 * evenly over the day, for the low, middle and high capacity. Null where it does not come within 60 days.
 */
export function daysToDry(of: {
  inVessel: MixInVessel;
  vessel: Vessel;
  plant: { readonly values: GroupValues; readonly canopyWidthCm: number };
  et0MmPerDay: number;
}): Ranged | null {
  const { inVessel, vessel, plant } = of;
  const { low, mid, high } = inVessel.ranges.capacityFactor;
  const factors = Float64Array.of(low, mid, high);
  const atFullRoot = { wetAboveFrac: Number.POSITIVE_INFINITY, restingShareFrac: 0, rootsShareFrac: 1 };
  const tank = tankOf({ inVessel, vessel, ...plant, ...atFullRoot }, fullPots(factors));
  const forcing = steadyForcing(of.et0MmPerDay);
  const { unusableMl, usableMl } = inVessel.hold;
  const refillMl = unusableMl + plant.values.refillFrac * usableMl;
  const days = [Number.NaN, Number.NaN, Number.NaN];
  for (let hour = 0; hour < forcing.hourCount; hour++) {
    runHours(tank, { forcing, fromHour: hour, toHour: hour + 1, pourMl: 0 }, null);
    for (const [k, factor] of factors.entries()) {
      if (Number.isNaN(days[k]) && contentMl(tank, k) <= refillMl * factor) days[k] = (hour + 1) / 24;
    }
    if (!days.some(Number.isNaN)) return { low: days[0]!, mid: days[1]!, high: days[2]! };
  }
  return null;
}

function fullPots(capacityFactor: Float64Array): Particles {
  const size = capacityFactor.length;
  const ones = () => new Float64Array(size).fill(1);
  const zeros = () => new Float64Array(size);
  return {
    size,
    weightFrac: ones().map((one) => one / size),
    capacityFactor,
    thirstFactor: ones(),
    wallFactor: ones(),
    catchFactor: ones(),
    surfaceFactor: ones(),
    tareKg: zeros(),
    surfaceMl: zeros(),
    bodyMl: zeros(),
    saucerMl: zeros(),
  };
}

function steadyForcing(et0MmPerDay: number): SpotForcing {
  const hourCount = MOST_DAYS * 24;
  const zeros = () => new Float64Array(hourCount);
  return {
    spotId: "steady",
    startUtcMs: 0,
    hourCount,
    memberCount: 1,
    et0Mm: zeros().fill(et0MmPerDay / 24),
    rainMm: zeros(),
    tempC: zeros(),
    plantTempC: zeros(),
    lightMjPerM2: zeros(),
    gustMPerS: zeros(),
  };
}
