import type { PotNow } from "../../pot/pot-now.ts";
import { shareWhere } from "../rows/spread-of.ts";

/** Share of the cloud whose base has no air now. */
export function airlessShareFrac({ cloud, inVessel, wetAboveFrac }: PotNow): number {
  const { capacityMl } = inVessel.hold;
  const values = cloud.waterMl.map((waterMl, i) => waterMl / (capacityMl * cloud.capacityFactor[i]!));
  return shareWhere({ values, weightFrac: cloud.weightFrac }, (frac) => frac > wetAboveFrac);
}
