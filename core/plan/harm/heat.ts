/** Light in an hour at which leaves stand in full sun, MJ/m2; about half of the noon sun. Chosen by us. */
const FULL_SUN_MJ_PER_M2 = 1.5;
/** Harm of an hour in full sun five degrees above the group's limit. Chosen by us: a week of such afternoons costs a tenth. */
const HARM_PER_HOUR = 0.004;
/** Plants in the shade weeks after planting, or back from the dim, scorch this many degrees earlier. Chosen by us. */
export const TENDER_BY_C = 6;

/** Harm of one hour of heat and sun above the limit. */
export function harmOfHotHour(hour: { tempC: number; lightMjPerM2: number; limitC: number }): number {
  const over = hour.tempC - hour.limitC;
  if (over <= 0) return 0;
  return HARM_PER_HOUR * Math.min(3, over / 5) * Math.min(1, hour.lightMjPerM2 / FULL_SUN_MJ_PER_M2);
}
