import { canopyAreaCm2 } from "./canopy.ts";

/** Kilograms in a litre of the spheroid that a plant fills: bodies that store water, and twigs with leaves. Chosen. */
const SUCCULENT_KG_PER_L = 0.07;
const LEAFY_KG_PER_L = 0.012;

/** Weight of the plant itself as guessed from its outline, kg. Off by half or double. */
export function plantMassKg(
  plant: { canopyWidthCm: number; plantHeightCm: number },
  values: { leafy: boolean },
): number {
  const outlineMl = (2 / 3) * canopyAreaCm2(plant) * plant.plantHeightCm;
  return (outlineMl / 1000) * (values.leafy ? LEAFY_KG_PER_L : SUCCULENT_KG_PER_L);
}
