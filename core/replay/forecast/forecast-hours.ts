import type { LocalDay } from "../../site/local-days.ts";
import type { Site } from "../../site/site.ts";
import type { SunHours } from "../../site/sun-hours.ts";
import type { HoursReady } from "../../weather/hours-ready.ts";
import { addBetweenAnchors, noonAnchors, temperatureAnchors } from "../../weather/members/anchors.ts";
import type { DayErrors } from "./day-errors.ts";
import { fillForecastRain, type RainDays } from "./forecast-rain.ts";
import type { PlaceBias } from "./place-bias.ts";

/** True weather of a site with what is reckoned once for it. */
export interface Truth {
  readonly site: Site;
  readonly hours: HoursReady;
  readonly sun: SunHours;
  readonly days: readonly LocalDay[];
  readonly rainDays: RainDays;
}

/** Columns of some days as a forecast tells them; index = hour * size + member. */
export interface ForecastHours {
  readonly tempC: Float64Array;
  readonly dewPointC: Float64Array;
  readonly rainMm: Float64Array;
  readonly windMPerS: Float64Array;
  readonly radiationMjPerM2: Float64Array;
  readonly cloudFrac: Float64Array;
}

const LEAST_WIND_M_PER_S = 0.2;
/** Sun left in an hour that is told wet but was dry, and the other way round. Chosen by us. */
const SUN_WHEN_WET_FRAC = 0.5;
const WET_HOUR_MM = 0.2;
/** Broken cloud beside the sun can pass a clear sky for an hour. Common practice. */
const MOST_CLEARNESS_FRAC = 1.05;
/** Cloud that goes with a share of sun lost. Chosen by us. */
const CLOUD_FOR_SUN = 0.8;
const CLOUD_IN_RAIN_FRAC = 0.9;

/** Whole days `fromDay` to `toDay` of the truth as a forecast with those errors, at a place with that bias, tells them. */
export function forecastHours(
  truth: Truth,
  of: { fromDay: number; toDay: number; errors: DayErrors; bias: PlaceBias },
): ForecastHours {
  const { errors, bias } = of;
  const span = spanOf(truth, of);
  const tempC = withTemperature(span, errors, bias);
  const rainMm = fillForecastRain(truth, { ...of, fromHour: span.fromHour, hourCount: span.hourCount });
  return {
    tempC,
    dewPointC: withDew(span, { errors, bias, tempC }),
    rainMm,
    windMPerS: withWind(span, errors, bias),
    ...withSun(span, { errors, bias, rainMm }),
  };
}

interface Span {
  readonly truth: Truth;
  readonly startUtcMs: number;
  readonly fromHour: number;
  readonly hourCount: number;
  readonly size: number;
  /** On the span's own hours. */
  readonly days: readonly LocalDay[];
}

function spanOf(truth: Truth, of: { fromDay: number; toDay: number; errors: DayErrors }): Span {
  const fromHour = truth.days[of.fromDay]!.fromHour;
  const hourCount = truth.days[of.toDay - 1]!.toHour - fromHour;
  const days = truth.days.slice(of.fromDay, of.toDay).map((day) => ({
    ...day,
    fromHour: day.fromHour - fromHour,
    toHour: day.toHour - fromHour,
  }));
  const startUtcMs = truth.hours.startUtcMs + fromHour * 3_600_000;
  return { truth, startUtcMs, fromHour, hourCount, size: of.errors.size, days };
}

/** The true course for every member. */
function spread({ fromHour, hourCount, size }: Span, column: Float64Array): Float64Array {
  const out = new Float64Array(hourCount * size);
  for (let hour = 0; hour < hourCount; hour++) {
    out.fill(column[fromHour + hour]!, hour * size, (hour + 1) * size);
  }
  return out;
}

function withTemperature(span: Span, errors: DayErrors, bias: PlaceBias): Float64Array {
  const { size, days, truth } = span;
  const column = spread(span, truth.hours.tempC);
  const atAnchor = new Float64Array(2 * days.length * size);
  for (let d = 0; d < days.length; d++) {
    for (let m = 0; m < size; m++) {
      atAnchor[2 * d * size + m] = bias.tempMinC + errors.tempMinC[d * size + m]!;
      atAnchor[(2 * d + 1) * size + m] = bias.tempMaxC + errors.tempMaxC[d * size + m]!;
    }
  }
  addBetweenAnchors(column, temperatureAnchors(span, days, truth.site), atAnchor);
  return column;
}

function withDew(span: Span, of: { errors: DayErrors; bias: PlaceBias; tempC: Float64Array }): Float64Array {
  const column = spread(span, span.truth.hours.dewPointC);
  const atNoon = of.errors.dewPointC.map((errorC) => errorC + of.bias.dewPointC);
  addBetweenAnchors(column, noonAnchors(span, span.days, span.truth.site), atNoon);
  for (let i = 0; i < column.length; i++) column[i] = Math.min(column[i]!, of.tempC[i]!);
  return column;
}

function withWind(span: Span, errors: DayErrors, bias: PlaceBias): Float64Array {
  const column = spread(span, span.truth.hours.windMPerS);
  addBetweenAnchors(column, noonAnchors(span, span.days, span.truth.site), errors.windMPerS);
  for (let i = 0; i < column.length; i++) {
    column[i] = bias.windFactor * Math.max(LEAST_WIND_M_PER_S, column[i]!);
  }
  return column;
}

function withSun(
  span: Span,
  of: { errors: DayErrors; bias: PlaceBias; rainMm: Float64Array },
): { radiationMjPerM2: Float64Array; cloudFrac: Float64Array } {
  const { truth, fromHour, size, days } = span;
  const radiationMjPerM2 = spread(span, truth.hours.radiationMjPerM2);
  const cloudFrac = spread(span, truth.hours.cloudFrac);
  for (const [d, day] of days.entries()) {
    for (let hour = day.fromHour; hour < day.toHour; hour++) {
      const wasWet = truth.hours.rainMm[fromHour + hour]! >= WET_HOUR_MM;
      const most = MOST_CLEARNESS_FRAC * truth.sun.clearSkyMjPerM2[fromHour + hour]!;
      for (let m = 0; m < size; m++) {
        const i = hour * size + m;
        const factor = of.errors.sunFactor[d * size + m]!;
        const isWet = of.rainMm[i]! >= WET_HOUR_MM;
        const changed = isWet === wasWet ? 1 : isWet ? SUN_WHEN_WET_FRAC : 1 / SUN_WHEN_WET_FRAC;
        radiationMjPerM2[i] = Math.min(most, radiationMjPerM2[i]! * factor * changed * of.bias.sunFactor);
        const cloud = Math.min(1, Math.max(0, cloudFrac[i]! + CLOUD_FOR_SUN * (1 - factor)));
        cloudFrac[i] = isWet ? Math.max(CLOUD_IN_RAIN_FRAC, cloud) : cloud;
      }
    }
  }
  return { radiationMjPerM2, cloudFrac };
}
