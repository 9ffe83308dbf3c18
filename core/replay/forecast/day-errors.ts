import { forecastError } from "../../weather/members/forecast-error.ts";
import type { RandomStream } from "../../weather/seeded-random.ts";
import type { ErrorBook } from "./error-book.ts";
import { heavyTailed } from "./error-process.ts";
import { forecastRainMm } from "./rain-scores.ts";
import { centreErrors, memberErrors, newWalk, type StandardErrors } from "./standard-errors.ts";

/** What one course of a forecast says wrong about one day. Index = day of the course * size + member. */
export interface DayErrors {
  readonly size: number;
  readonly tempMaxC: Float64Array;
  readonly tempMinC: Float64Array;
  readonly dewPointC: Float64Array;
  readonly windMPerS: Float64Array;
  readonly sunFactor: Float64Array;
  /** The day's rain as told, not an error. */
  readonly rainMm: Float64Array;
  /** Hours by which the rain is told too late. */
  readonly shiftHours: Float64Array;
}

/** Error of maximum with that of the minimum of a day: 0.21 to 0.36. [NWSCITIES2022] */
const MAX_WITH_MIN = 0.3;
/**
 * Errors are drawn at the usual hours of the extremes and straight between them; a day's own extremes, free to move to
 * where they hurt least, then err 3 to 11 % less (measured on four years of Seattle and New York). This makes it good.
 */
const EXTREMES_MOVE = 1.08;
/** Dew point's error over that of the minimum, and how far they go together. Chosen by us: no score was found. */
const DEW = { overMinimum: 0.9, withMinimum: 0.4 } as const;
/** Relative error of a day's sun at lead 0, which grows as that of ET0; gloomier where told wetter. */
const SUN = { sdFrac: 0.15, withRain: -0.4 } as const;
/** Hour of rain, standard deviation at lead 0 and its growth a day. Chosen by us. */
const SHIFT_H = { first: 1.5, growth: 0.8, most: 6 } as const;
/** Forecasts tell rain a tenth oftener than it falls: 1.08 to 1.14 over the thresholds of one model. [AAGAM2026] */
const FREQUENCY_BIAS = 1.1;
/** What course of the forecast is asked for: the single run, or an ensemble of some members. */
export interface CourseAsk {
  readonly issueDay: number;
  readonly fromDay: number;
  readonly toDay: number;
  /** Null for the single run. */
  readonly members: { readonly size: number; readonly random: RandomStream } | null;
}

/**
 * Errors by day and member of a forecast issued on a day. Past days have the error of the day on which they were
 * nearest, lead 0, as feeds stitch their past together.
 */
export function dayErrorsOf(book: ErrorBook, ask: CourseAsk): DayErrors {
  const size = ask.members?.size ?? 1;
  const out = emptyErrors(size, ask.toDay - ask.fromDay);
  const walks = Array.from({ length: size }, newWalk);
  for (let day = ask.fromDay; day < ask.toDay; day++) {
    const lead = Math.max(0, day - ask.issueDay);
    const centre = centreErrors(book, { lead, day, ofEnsemble: ask.members !== null });
    for (let m = 0; m < size; m++) {
      const z =
        ask.members === null
          ? centre
          : memberErrors(centre, { walk: walks[m]!, lead, random: ask.members.random });
      fill(out, { at: (day - ask.fromDay) * size + m, book, lead, day, z });
    }
  }
  return out;
}

function emptyErrors(size: number, dayCount: number): DayErrors {
  const column = () => new Float64Array(dayCount * size);
  return {
    size,
    tempMaxC: column(),
    tempMinC: column(),
    dewPointC: column(),
    windMPerS: column(),
    sunFactor: column(),
    rainMm: column(),
    shiftHours: column(),
  };
}

function fill(
  out: DayErrors,
  of: { at: number; book: ErrorBook; lead: number; day: number; z: StandardErrors },
): void {
  const { at, book, lead, day, z } = of;
  const error = forecastError(lead, book.latDeg);
  const min = MAX_WITH_MIN * z.max + Math.sqrt(1 - MAX_WITH_MIN ** 2) * z.min;
  const dew = DEW.withMinimum * min + Math.sqrt(1 - DEW.withMinimum ** 2) * z.dew;
  const sun = SUN.withRain * z.rain + Math.sqrt(1 - SUN.withRain ** 2) * z.sun;
  const sunSd = (SUN.sdFrac * error.et0SdFrac) / forecastError(0, book.latDeg).et0SdFrac;
  out.tempMaxC[at] = EXTREMES_MOVE * error.tempMaxSdC * heavyTailed(z.max);
  out.tempMinC[at] = EXTREMES_MOVE * error.tempMinSdC * heavyTailed(min);
  out.dewPointC[at] = DEW.overMinimum * error.tempMinSdC * dew;
  out.windMPerS[at] = error.windSdMPerS * z.wind;
  out.sunFactor[at] = Math.exp(sunSd * sun - sunSd ** 2 / 2);
  out.shiftHours[at] = Math.min(SHIFT_H.most, SHIFT_H.first + SHIFT_H.growth * lead) * z.shift;
  out.rainMm[at] = rainOf(book, { day, rain: z.rain, own: z.own, correlation: error.rainCorrelation });
}

/** A member's score is the centre's, drawn in a little and given a number of its own, so that its climate is kept. */
function rainOf(
  { rain }: ErrorBook,
  of: { day: number; rain: number; own: StandardErrors["own"]; correlation: number },
): number {
  const { day, correlation } = of;
  const law = rain.laws[day]!;
  const common = { law, frequencyBias: FREQUENCY_BIAS };
  if (of.own === null)
    return forecastRainMm({ ...common, score: rain.score[day]!, error: of.rain, correlation });
  const centre = correlation * rain.score[day]! + Math.sqrt(1 - correlation ** 2) * of.rain;
  const ownSd = of.own.share * Math.sqrt(1 - correlation ** 2);
  return forecastRainMm({
    ...common,
    score: centre,
    error: of.own.z,
    correlation: Math.sqrt(1 - ownSd ** 2),
  });
}
