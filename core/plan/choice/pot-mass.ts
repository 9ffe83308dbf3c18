import type { PotNow } from "../../pot/pot-now.ts";
import { meanOf } from "../rows/spread-of.ts";

/** Fresh plant for each litre of the space its crown fills, kg. Chosen by us: a crown is mostly air. */
const PLANT_KG_PER_L = 0.02;

/** What a pot weighs as it stands: vessel, mix, water by the mean of its cloud, and a guess at the plant. */
export function massNowKg(now: PotNow): number {
  const { hold } = now.inVessel;
  const waterMl = meanOf({ values: now.cloud.waterMl, weightFrac: now.cloud.weightFrac });
  return hold.dryMassKg + waterMl / 1000 + plantMassKg(now.pot);
}

/** A guess at the plant from the cylinder around its crown. */
export function plantMassKg({ canopyWidthCm, plantHeightCm }: PotNow["pot"]): number {
  return ((Math.PI / 4) * canopyWidthCm ** 2 * plantHeightCm * PLANT_KG_PER_L) / 1000;
}
