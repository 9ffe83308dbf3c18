import type { RainDoubt } from "../weather/hours-ready.ts";
import type { SpotId } from "./spot.ts";

/**
 * What the weather does to a pot at one spot, by hour and member: hour-major, members innermost,
 * index = hour * memberCount + member. No NaN: what the ladder could not fill is not in the span.
 */
export interface SpotForcing {
  readonly spotId: SpotId;
  readonly startUtcMs: number;
  readonly hourCount: number;
  /** 1 for the past (one course of weather), the cloud's size for the time ahead. */
  readonly memberCount: number;
  /** Reference evapotranspiration at the spot, mm in the hour, floored at zero. */
  readonly et0Mm: Float64Array;
  /** Rain that reaches the rim of a pot here, mm. */
  readonly rainMm: Float64Array;
  /** Air among the pots, °C. */
  readonly tempC: Float64Array;
  /** Leaf and stem level: air less the clear calm night drop, plus night warmth, °C. */
  readonly plantTempC: Float64Array;
  /** Sun and sky light that arrives here, MJ/m2 in the hour. */
  readonly lightMjPerM2: Float64Array;
  /** Strongest gust at the pots, m/s; one column for all members: index = hour. */
  readonly gustMPerS: Float64Array;
  /** Set where the rain gone by is a model's word: share of open rain that arrives here, and the hours a gauge settled. */
  readonly rainDoubt?: RainDoubt & { readonly openFrac: number };
}
