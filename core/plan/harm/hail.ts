/**
 * WMO code 4677 with hail at the time: 27 and 89, 90 in showers, 96 and 99 in thunderstorms. Soft hail and ice pellets
 * break nothing. [WMO306]
 */
export function isHail(weatherCode: number): boolean {
  return HAIL_CODES.has(weatherCode);
}

const HAIL_CODES: ReadonlySet<number> = new Set([27, 89, 90, 96, 99]);

/** Harm of a fall of hail of 10 to 20 mm, which tears leaves and bruises stems. Chosen by us on [TORRO] class H2. */
const FALL_HARM = 0.03;
/** How often hail that is forecast for a region meets a given bench. Chosen by us: its tracks are narrow. */
export const HAIL_MEETS_FRAC = 0.2;

/** Expected harm of a day with hail forecast, to a pot that stands where a share of the rain arrives. */
export function harmOfHailDay(rainFrac: number): number {
  return FALL_HARM * HAIL_MEETS_FRAC * rainFrac;
}
