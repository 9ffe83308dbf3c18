import type { Vessel } from "./vessel.ts";
import { areaCm2At, mixDepthCm, volumeMlBetween, wallAreaCm2To } from "./vessel-shape.ts";

/**
 * Weight of a vessel's walls and base, kg for each cm2 of inner face: usual thickness times density. Chosen by us:
 * plastic 1.2 mm x 0.95, fired clay 8 mm x 1.9, glazed 8 mm x 2.1, fabric 0.4 kg/m2, steel 0.7 mm x 7.8, wood 15 mm x 0.6.
 */
const WALL_KG_PER_CM2: Readonly<Record<Vessel["material"], number>> = {
  plastic: 0.000114,
  unglazed: 0.00152,
  glazed: 0.00168,
  fabric: 0.00004,
  metal: 0.00055,
  wood: 0.0009,
};

/** Loose grit as top dressing. Middle of the library's grit. */
const DRESSING_KG_PER_L = 1.5;

/** Weight of the empty vessel, kg: as weighed by the grower, else from its faces and the usual wall. */
export function emptyVesselMassKg(vessel: Vessel): number {
  if (vessel.emptyMassKg !== undefined) return vessel.emptyMassKg;
  const facesCm2 = wallAreaCm2To(vessel, vessel.heightCm) + areaCm2At(vessel, 0);
  return facesCm2 * WALL_KG_PER_CM2[vessel.material];
}

/** Weight of the stone on top of the mix, kg. */
export function dressingMassKg(vessel: Vessel): number {
  const fromCm = mixDepthCm(vessel);
  const toCm = fromCm + (vessel.topDressingCm ?? 0);
  return (volumeMlBetween(vessel, { fromCm, toCm }) / 1000) * DRESSING_KG_PER_L;
}
