import type { PotNow } from "../../pot/pot-now.ts";

/** Share of usable water at which the next watering is due: between growth and rest as far as the plant rests. */
export function refillFracNow(now: Pick<PotNow, "values" | "rest">): number {
  const resting = now.rest.restingShareFrac;
  return now.values.refillFrac * (1 - resting) + now.values.restRefillFrac * resting;
}

/** What the pot holds at its refill point, mL; each particle by its own capacity factor. */
export function refillContentMl(now: Pick<PotNow, "values" | "rest" | "inVessel">): number {
  const { unusableMl, usableMl } = now.inVessel.hold;
  return unusableMl + refillFracNow(now) * usableMl;
}

/** Share of the usable water that a particle still has; below zero when the mix is drier than the plant can dry it. */
export function usableLeftFrac(
  now: Pick<PotNow, "inVessel">,
  { waterMl, capacityFactor }: { waterMl: number; capacityFactor: number },
): number {
  const { unusableMl, usableMl } = now.inVessel.hold;
  return (waterMl - unusableMl * capacityFactor) / (usableMl * capacityFactor);
}
