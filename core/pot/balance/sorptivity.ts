import type { MixInVessel } from "../../mix/mix-in-vessel.ts";
import { waterFracAt } from "../../mix/retention.ts";

/** Suction up to which water still moves readily to a drying surface, cm. */
const READY_CM = 100;
/** mm per square root of a day: what coarse grains give, and what each share of readily moving water adds. */
const COARSE = 2;
const PER_SHARE = 50;

/**
 * Sorptivity of drying for a mix that starts drained, mm per square root of a day: how fast water comes up once the
 * surface has begun to dry. Linear in the water that the drained mix holds beyond what is left at 100 cm of suction.
 *
 * The two figures are chosen by us so that a loam comes to the 11.5 of a measured column [MODAIHSH1985] and coarse
 * grains to the 3 to 5 that growers' drying times suggest; peat then comes to 30, as a Richards column has it.
 */
export function sorptivityMmPerSqrtDay({ hold, retention }: Pick<MixInVessel, "hold" | "retention">): number {
  const readyFrac = Math.max(0, hold.capacityFrac - waterFracAt(retention, READY_CM));
  return COARSE + PER_SHARE * readyFrac;
}
