/** Harm of a whole day in darkness for a plant in growth. Chosen by us: two months of it are a quarter of a plant. */
const HARM_PER_DARK_DAY = 0.004;
/**
 * Share of the light that steady growth asks for below which a plant lives on what it has stored; with more it merely
 * waits. Chosen by us, because plants wintered frost-free at a window for months, with a third to a sixth of summer's
 * light, are common practice and come through with little lost.
 */
export const WAITS_FRAC = 1 / 3;

/** Harm of a day too dim to live on; a resting plant minds it half as much at most, one that stands leafless not at all. */
export function harmOfDimDay(day: {
  lightMjPerM2: number;
  needMjPerM2: number;
  restingShareFrac: number;
  leaflessIsRest: boolean;
}): number {
  const shortFrac = Math.max(0, 1 - day.lightMjPerM2 / (WAITS_FRAC * day.needMjPerM2));
  const minds = 1 - day.restingShareFrac / (day.leaflessIsRest ? 1 : 2);
  return HARM_PER_DARK_DAY * shortFrac * minds;
}
