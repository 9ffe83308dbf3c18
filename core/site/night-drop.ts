/**
 * How far leaf and stem lie below the air in the open on a clear calm night, °C: middle of the 1 to 3 °C measured
 * on leaves. [LEUNING1988]
 */
const CLEAR_CALM_DROP_C = 2;

/**
 * Drop of leaf temperature below the air at night, °C, 0 to 2. Full under less than a quarter of cloud and less
 * than 2 m/s of wind at the pots, half at half cloud, none under 7/8 of cloud or above 3 m/s.
 * The wind limit of 2 m/s is the condition for radiation nights [SNYDER2005]; the slopes between are chosen by us
 * so that small changes of the forecast do not flip the advice.
 */
export function nightDropC(air: { cloudFrac: number; windMPerS: number; skyFrac: number }): number {
  const clear = Math.min(
    1,
    Math.max(0, air.cloudFrac <= 0.5 ? 1.5 - 2 * air.cloudFrac : (0.875 - air.cloudFrac) / 0.75),
  );
  const calm = Math.min(1, Math.max(0, 3 - air.windMPerS));
  return CLEAR_CALM_DROP_C * clear * calm * air.skyFrac;
}
