import { sunHours } from "../../site/sun-hours.ts";
import type { HoursReady } from "../../weather/hours-ready.ts";
import { seededRandom, seedFrom } from "../../weather/seeded-random.ts";
import { HOUR_MS, type Weather } from "../../weather/weather.ts";
import type { DailyWeather } from "../hours/daily-weather.ts";
import { dayAxis } from "../hours/day-axis.ts";
import { REPLAY_STREAM } from "../hours/streams.ts";
import { type DayErrors, dayErrorsOf } from "./day-errors.ts";
import { type ErrorBook, errorBook } from "./error-book.ts";
import { type ForecastHours, forecastHours, type Truth } from "./forecast-hours.ts";
import { rainDays } from "./forecast-rain.ts";
import { drawPlaceBias, type PlaceBias } from "./place-bias.ts";
import { rainScores } from "./rain-scores.ts";
import { hourColumns, joined, memberColumns } from "./weather-columns.ts";

/** What a feed would have sent on a morning. */
export interface Forecaster {
  /** Every hour of the span as the feed has it once it is past. */
  readonly past: HoursReady;
  /**
   * @param issueUtcMs  whole hour; the past is told up to it, the forecast from it on
   * @param pastDays, aheadDays  whole local days before and after the day of issue
   */
  weatherAt(ask: { issueDay: number; issueUtcMs: number; pastDays: number; aheadDays: number }): Weather;
}

/** Hours between a model's run and the morning it is read. */
const RUN_AGE_HOURS = 4;

/**
 * Forecasts of real days with published errors: each issue a single run and an ensemble, past days as the feed has
 * them (nearest run, not gauges), one steady bias for the place. The same seed gives the same forecasts.
 *
 * Why not the planner's own dressing of forecasts: that one turns a forecast into what may come, this one turns what
 * came into what was forecast. Both read one table of errors; correlations, tails and biases here are the world's own.
 *
 * @param memberCount  0: no ensemble is sent
 */
export function forecaster(of: {
  daily: DailyWeather;
  hours: HoursReady;
  seed: number;
  memberCount: number;
  bias?: PlaceBias;
}): Forecaster {
  const { daily, hours, seed, memberCount } = of;
  const axis = dayAxis(daily.site, daily.firstDay, daily.rainMm.length);
  const { days, firstDayNumber } = axis;
  const truth: Truth = {
    site: daily.site,
    hours,
    sun: sunHours(axis, daily.site),
    days,
    rainDays: rainDays({ rainMm: daily.rainMm, climate: daily.climate, days, firstDayNumber, seed }),
  };
  const book = errorBook({
    seed,
    firstDayNumber,
    dayCount: days.length,
    latDeg: daily.site.latDeg,
    rain: rainScores(daily, seed),
  });
  const bias = of.bias ?? drawPlaceBias(seed);
  const whole = { fromDay: 0, toDay: days.length };
  const nearest = dayErrorsOf(book, { ...whole, issueDay: days.length, members: null });
  const past = forecastHours(truth, { ...whole, errors: nearest, bias });
  const feed = { truth, book, bias, seed: seedFrom([seed, firstDayNumber]), memberCount, past };
  const { startUtcMs, hourCount } = hours;
  const wholePast: HoursReady = {
    startUtcMs,
    hourCount,
    memberCount: 1,
    ...hourColumns(past, { truth, fromHour: 0, toHour: hourCount }),
    weatherCode: new Float64Array(hourCount).fill(-1),
    rainDoubt: { gauged: null },
  };
  return { past: wholePast, weatherAt: (ask) => weatherOf(feed, ask) };
}

interface Feed {
  readonly truth: Truth;
  readonly book: ErrorBook;
  readonly bias: PlaceBias;
  readonly seed: number;
  readonly memberCount: number;
  /** Every day as the nearest run told it. */
  readonly past: ForecastHours;
}

function weatherOf(feed: Feed, ask: Parameters<Forecaster["weatherAt"]>[0]): Weather {
  const { truth, book, bias, memberCount } = feed;
  const { issueDay } = ask;
  const toDay = Math.min(truth.days.length, issueDay + ask.aheadDays + 1);
  const fromHour = truth.days[Math.max(0, issueDay - ask.pastDays)]!.fromHour;
  const issueHour = truth.days[issueDay]!.fromHour;
  const toHour = truth.days[toDay - 1]!.toHour;
  const course = { issueDay, fromDay: issueDay, toDay };
  const told = (errors: DayErrors) => forecastHours(truth, { ...course, errors, bias });
  const run = runOf(feed, { issueDay, toDay });
  const random = seededRandom(seedFrom([feed.seed, REPLAY_STREAM.members, issueDay]));
  const members = { size: memberCount, random };
  const span = { truth, fromHour, toHour };
  return {
    startUtcMs: truth.hours.startUtcMs + fromHour * HOUR_MS,
    hourCount: toHour - fromHour,
    hours: hourColumns(joined({ past: feed.past, ahead: run, fromHour, issueHour }), span),
    members:
      memberCount === 0
        ? null
        : memberColumns(told(dayErrorsOf(book, { ...course, members })), {
            memberCount,
            hourCount: toHour - fromHour,
            skipHours: issueHour - fromHour,
          }),
    origin: {
      source: "case",
      fetchedUtcMs: ask.issueUtcMs - RUN_AGE_HOURS * HOUR_MS,
      credit: "replayed weather",
    },
  };
}

/** The single run from the day of issue on; the day before lends its last hours, so that both join without a step. */
function runOf(
  { truth, book, bias }: Feed,
  { issueDay, toDay }: { issueDay: number; toDay: number },
): ForecastHours {
  const fromDay = Math.max(0, issueDay - 1);
  const errors = dayErrorsOf(book, { issueDay, fromDay, toDay, members: null });
  const run = forecastHours(truth, { fromDay, toDay, errors, bias });
  const skip = truth.days[issueDay]!.fromHour - truth.days[fromDay]!.fromHour;
  const columns = Object.entries(run).map(([name, column]) => [name, column.subarray(skip)]);
  return Object.fromEntries(columns) as ForecastHours;
}
