/** Canopy seen from above as a circle, cm2. */
export function canopyAreaCm2(plant: { canopyWidthCm: number }): number {
  return (Math.PI * plant.canopyWidthCm ** 2) / 4;
}
