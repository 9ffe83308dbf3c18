/** Harm of a whole day in darkness for a plant in growth. Chosen by us: some two months of it are as good as a loss. */
const HARM_PER_DARK_DAY = 0.004;

/** Harm of a day too dim for steady growth; a resting plant minds it half as much at most. */
export function harmOfDimDay(day: {
  lightMjPerM2: number;
  needMjPerM2: number;
  restingShareFrac: number;
}): number {
  const shortFrac = Math.max(0, 1 - day.lightMjPerM2 / day.needMjPerM2);
  return HARM_PER_DARK_DAY * shortFrac * (1 - day.restingShareFrac / 2);
}
