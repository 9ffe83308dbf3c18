import { localHour } from "../../site/local-days.ts";
import { seededRandom, seedFrom } from "../seeded-random.ts";
import { HOUR_MS } from "../weather.ts";
import { ERROR_STREAM } from "./error-draws.ts";
import { aheadOf, type MemberDay, type MemberFrame, realMember } from "./member-frame.ts";
import {
  MOST_STRETCH,
  type RainLaw,
  rainFallenMm,
  rainLaw,
  scoreOfDry,
  scoreOfRain,
  WET_DAY_MM,
} from "./rain-law.ts";
import { drawSpell, rainClimate } from "./rain-spell-shape.ts";

/**
 * Correlation of a real member's daily rain with what then falls, at least. Members that all say rain are right in
 * about 0.7 of cases above 1 mm and half above 10 mm, those that all say dry are wrong in 0.05 to 0.1: that is what
 * 0.75 gives at the usual share of wet days. [GEFSINNSBRUCK, our reckoning: observed share = 0.05 + 0.65 of the share
 * of members for 1 to 5 mm, 0.05 + 0.4 for 10 mm and more]
 */
const MEMBER_CORRELATION = 0.75;

/** A forecast without members misses the hour of rain by so much (standard deviation) on days 0 and 4. Our choice. */
const SHIFT_SD_HOURS = { first: 1, later: 3, laterDay: 4 } as const;

/**
 * Rain by hour and member, mm.
 *
 * Each day's amount is turned into a normal score by the site's own law of rain, shrunk by the correlation of its lead
 * day, given an error, and turned back. So a dry forecast may turn wet and a wet one dry, as often as published scores
 * say, and amounts shrink toward what is usual at the site. The hours keep the forecast's shape; a day that the
 * forecast had dry gets a spell of published length.
 */
export function rainMembersMm(frame: MemberFrame): Float64Array {
  const out = new Float64Array(frame.hourCount * frame.size);
  const law = rainLaw(knownDailyRainMm(frame));
  for (const day of frame.days) {
    const errors = frame.errors(ERROR_STREAM.rain, day.dayNumber);
    const random = seededRandom(seedFrom([frame.seed, ERROR_STREAM.shape, day.dayNumber]));
    const shape = new Float64Array(day.toHour - day.fromHour);
    const context = { frame, day, law, random, shape };
    for (let m = 0; m < frame.size; m++) memberDay(out, { ...context, member: m, error: errors[m]! });
  }
  return out;
}

interface MemberDayContext {
  readonly frame: MemberFrame;
  readonly day: MemberDay;
  readonly law: RainLaw;
  readonly random: ReturnType<typeof seededRandom>;
  readonly shape: Float64Array;
  readonly member: number;
  readonly error: number;
}

function memberDay(out: Float64Array, context: MemberDayContext): void {
  const { frame, day, shape, random, member } = context;
  // Always drawn, in this order, so that one member's day does not move the numbers of the next.
  const drySpot = random.uniform();
  const shift = random.normal();
  const forecast = forecastShape(context, shift);
  const rainMm = trueRainMm(context, { forecastMm: forecast, drySpot });
  if (rainMm === 0) shape.fill(0);
  // Beyond what its own hours are stretched to, a spell of its own is drawn.
  else if (forecast < WET_DAY_MM || rainMm > MOST_STRETCH * forecast) {
    const firstClockHour = Math.floor(localHour(frame.startUtcMs + day.fromHour * HOUR_MS, frame.site.zone));
    drawSpell(shape, {
      rainMm,
      climate: climateOf(frame, day),
      firstClockHour,
      random: spellRandom(context),
    });
  }
  for (let k = 0; k < shape.length; k++) {
    out[(day.fromHour + k) * frame.size + member] = rainMm * shape[k]!;
  }
}

/** Writes the forecast's hours of the day as shares of their sum into `shape`; returns the sum, mm. */
function forecastShape({ frame, day, shape, member }: MemberDayContext, shift: number): number {
  const { ensemble } = frame;
  const base = aheadOf(frame, "rainMm");
  const step = ensemble ? 0 : Math.round(shift * shiftSdHours(day.leadDay));
  let sum = 0;
  for (let k = 0; k < shape.length; k++) {
    const from = day.fromHour + ((((k - step) % shape.length) + shape.length) % shape.length);
    const own = ensemble?.columns.rainMm[from * ensemble.memberCount + realMember(frame, member)];
    const rain = own === undefined || Number.isNaN(own) ? base[from]! : own;
    shape[k] = rain;
    sum += rain;
  }
  if (sum > 0) for (let k = 0; k < shape.length; k++) shape[k]! /= sum;
  return sum;
}

function shiftSdHours(leadDay: number): number {
  const { first, later, laterDay } = SHIFT_SD_HOURS;
  return first + (later - first) * Math.min(1, leadDay / laterDay);
}

/** The amount that falls in this member, mm. */
function trueRainMm(
  { frame, day, law, error }: MemberDayContext,
  of: { forecastMm: number; drySpot: number },
): number {
  const partOfDay = (day.toHour - day.fromHour) / 24;
  const dayLaw = { ...law, wetShareFrac: 1 - (1 - law.wetShareFrac) ** partOfDay };
  const published = day.error.rainCorrelation;
  const correlation = frame.ensemble && published > 0 ? Math.max(published, MEMBER_CORRELATION) : published;
  const toldScore =
    of.forecastMm >= WET_DAY_MM ? scoreOfRain(dayLaw, of.forecastMm) : scoreOfDry(dayLaw, of.drySpot);
  return rainFallenMm(dayLaw, { toldScore, correlation, error });
}

function climateOf(frame: MemberFrame, day: MemberDay) {
  const temps = aheadOf(frame, "tempC").subarray(day.fromHour, day.toHour);
  return rainClimate(frame.site.latDeg, temps.reduce((a, b) => a + b, 0) / temps.length);
}

function spellRandom({ frame, day, member }: MemberDayContext) {
  return seededRandom(seedFrom([frame.seed, ERROR_STREAM.shape, day.dayNumber, member + 1]));
}

/** Daily rain of the whole axis, past and ahead, in steps of 24 hours back and forth from now. */
function knownDailyRainMm(frame: MemberFrame): number[] {
  const { rainMm } = frame.settled.columns;
  const { nowHour, knownHours } = frame.settled;
  const days: number[] = [];
  const sum = (from: number) => rainMm.subarray(from, from + 24).reduce((a, b) => a + b, 0);
  for (let from = nowHour - 24; from >= 0; from -= 24) days.push(sum(from));
  for (let from = nowHour; from + 24 <= nowHour + knownHours; from += 24) days.push(sum(from));
  return days;
}
