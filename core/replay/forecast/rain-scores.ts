import {
  type RainLaw,
  rainLaw,
  rainOfScore,
  scoreOfDry,
  scoreOfRain,
  WET_DAY_MM,
} from "../../weather/members/rain-law.ts";
import { seededRandom, seedFrom } from "../../weather/seeded-random.ts";
import type { DailyWeather } from "../hours/daily-weather.ts";
import { REPLAY_STREAM } from "../hours/streams.ts";

/** Days before and after in every year that make up a day's season. Chosen by us. */
const SEASON_DAYS = 45;
const YEAR_DAYS = 365.25;

/** Every day's true rain as a normal score, and the law of its season that turns scores back into rain. */
export interface RainScores {
  readonly score: Float64Array;
  readonly laws: readonly RainLaw[];
}

/** Scores of a station's days within their own seasons. Dry days lie somewhere among the dry, drawn. */
export function rainScores(daily: DailyWeather, seed: number): RainScores {
  const firstDayNumber = Date.parse(`${daily.firstDay}T00:00:00Z`) / 86_400_000;
  const bySeason = new Map<number, RainLaw>();
  const laws = Array.from(daily.rainMm, (_, d) => {
    const season = Math.floor((d % YEAR_DAYS) / 10);
    const law = bySeason.get(season) ?? rainLaw(daysOfSeason(daily.rainMm, d));
    bySeason.set(season, law);
    return law;
  });
  const score = daily.rainMm.map((rainMm, d) => {
    if (rainMm >= WET_DAY_MM) return scoreOfRain(laws[d]!, rainMm);
    const random = seededRandom(seedFrom([seed, REPLAY_STREAM.dryDay, firstDayNumber + d]));
    return scoreOfDry(laws[d]!, random.uniform());
  });
  return { score, laws };
}

function daysOfSeason(rainMm: Float64Array, d: number): number[] {
  return Array.from(rainMm).filter((_, other) => {
    const apart = Math.abs(other - d) % YEAR_DAYS;
    return Math.min(apart, YEAR_DAYS - apart) <= SEASON_DAYS;
  });
}

/**
 * Rain that a forecast tells, mm, whose normal score goes with the truth's by `correlation`. [our reckoning: one
 * correlation of normal scores drives hits and false alarms at all amounts; NWSCITIES2022, JMA2023, AAGAM2026]
 * @param frequencyBias forecast wet days over true wet days; the mean is kept
 */
export function forecastRainMm(of: {
  law: RainLaw;
  score: number;
  error: number;
  correlation: number;
  frequencyBias: number;
}): number {
  const { law, correlation, frequencyBias } = of;
  const told: RainLaw = {
    wetShareFrac: Math.min(0.95, law.wetShareFrac * frequencyBias),
    scaleMm: law.scaleMm / frequencyBias,
  };
  return rainOfScore(told, correlation * of.score + Math.sqrt(1 - correlation ** 2) * of.error);
}
