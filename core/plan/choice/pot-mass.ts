import { plantMassKg } from "../../plant/plant-mass.ts";
import type { PotNow } from "../../pot/pot-now.ts";
import { meanOf } from "../rows/spread-of.ts";

/** What a pot weighs as it stands: vessel, mix, water by the mean of its cloud, and a guess at the plant. */
export function massNowKg(now: PotNow): number {
  const { hold } = now.inVessel;
  const waterMl = meanOf({ values: now.cloud.waterMl, weightFrac: now.cloud.weightFrac });
  return hold.dryMassKg + waterMl / 1000 + plantMassKg(now.pot, now.values);
}
