import type { Settings } from "../../plan/settings.ts";
import type { SpotForcing } from "../../site/forcing.ts";
import { forecastError } from "../../weather/members/forecast-error.ts";
import {
  type RainLaw,
  rainLaw,
  rainOfScore,
  scoreOfRain,
  WET_DAY_MM,
  wetScore,
} from "../../weather/members/rain-law.ts";
import { seededRandom, seedFrom } from "../../weather/seeded-random.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { spreadNormals } from "../learn/draw-particles.ts";

/** Of its own among the streams of a seed. */
const STREAM = 7401;
/** Days before a day that its law of rain is read off. Chosen by us: a season. */
const LAW_DAYS = 60;
/** A day's rain is stretched to so much over what was told at most. Chosen by us. */
const MOST_STRETCH = 8;
/** Hours of rain that was told by nobody. Chosen by us: a shower. */
const SHOWER_HOURS = 3;

interface Asked {
  readonly settings: Pick<Settings, "seed">;
  readonly latDeg: number;
  readonly size: number;
}

/** What one day of rain may truly have been, by particle: times what was told, or a shower that nobody told of. */
interface DayOfRain {
  readonly factor: Float64Array | null;
  readonly showerMmPerH: Float64Array | null;
  readonly showerFromHour: number;
}

/**
 * Rain gone by as it may have fallen, by hour and particle, mm at the rim. A model's rain of the day before is hardly
 * surer than its forecast: of the days it has wet a third are dry in the gauge, and amounts scatter by half and more.
 * Each day's amount is turned into a normal score by the season's own law, shrunk by the published correlation of the
 * nearest run, given an error, and turned back. [NWSCITIES2022, as for the forecast] All pots of a seed share the draws.
 *
 * Null where the forcing's rain counts as it stands: it was measured, or none arrives at the spot.
 */
export function doubtedRainMm(
  batch: { forcing: SpotForcing; fromHour: number; toHour: number },
  asked: Asked,
): Float64Array | null {
  const { forcing, fromHour, toHour } = batch;
  const { rainDoubt, memberCount } = forcing;
  const { size } = asked;
  if (rainDoubt === undefined || rainDoubt.openFrac <= 0 || memberCount !== 1 || size === 1) return null;
  const out = new Float64Array((toHour - fromHour) * size);
  for (let hour = fromHour; hour < toHour; hour++) {
    const toldMm = forcing.rainMm[hour]!;
    const at = (hour - fromHour) * size;
    if (rainDoubt.gauged?.[hour] === 1) {
      out.fill(toldMm, at, at + size);
      continue;
    }
    const { factor, showerMmPerH, showerFromHour } = dayOfRain(forcing, hour, asked);
    const inShower = hour >= showerFromHour && hour < showerFromHour + SHOWER_HOURS;
    if (toldMm > 0) for (let k = 0; k < size; k++) out[at + k] = toldMm * (factor === null ? 1 : factor[k]!);
    if (showerMmPerH !== null && inShower) for (let k = 0; k < size; k++) out[at + k]! += showerMmPerH[k]!;
  }
  return out;
}

/** Drawn once for a day and spot, and kept as long as the forcing is. */
const drawn = new WeakMap<SpotForcing, Map<string, DayOfRain>>();

function dayOfRain(forcing: SpotForcing, hour: number, asked: Asked): DayOfRain {
  const dayNumber = Math.floor((forcing.startUtcMs / HOUR_MS + hour) / 24);
  const days = drawn.get(forcing) ?? new Map<string, DayOfRain>();
  drawn.set(forcing, days);
  const key = `${dayNumber} ${asked.settings.seed} ${asked.size}`;
  const known = days.get(key);
  if (known !== undefined) return known;
  const day = drawDay(forcing, dayNumber, asked);
  days.set(key, day);
  return day;
}

function drawDay(forcing: SpotForcing, dayNumber: number, { settings, latDeg, size }: Asked): DayOfRain {
  const { openFrac } = forcing.rainDoubt!;
  const random = seededRandom(seedFrom([settings.seed, STREAM, dayNumber]));
  const errors = spreadNormals(size, random);
  const law = lawBefore(forcing, dayNumber);
  const rho = forecastError(0, latDeg).rainCorrelation;
  const rest = Math.sqrt(1 - rho ** 2);
  const toldMm = sumOfDayMm(forcing, dayNumber) / openFrac;
  const fallenMm = (score: number, k: number) => rainOfScore(law, rho * score + rest * errors[k]!);
  if (toldMm >= WET_DAY_MM) {
    const score = scoreOfRain(law, toldMm);
    const factor = errors.map((_, k) => Math.min(MOST_STRETCH, fallenMm(score, k) / toldMm));
    return { factor, showerMmPerH: null, showerFromHour: 0 };
  }
  const limit = wetScore(law);
  const showerMmPerH = errors.map(
    (_, k) => (openFrac * fallenMm(normalBelow(limit, random), k)) / SHOWER_HOURS,
  );
  const clockHour = Math.floor((25 - SHOWER_HOURS) * random.uniform());
  const showerFromHour = dayNumber * 24 + clockHour - forcing.startUtcMs / HOUR_MS;
  return { factor: null, showerMmPerH, showerFromHour };
}

/** Somewhere among the dry days; nobody knows how near to rain. */
function normalBelow(limit: number, random: { normal(): number }): number {
  for (;;) {
    const value = random.normal();
    if (value < limit) return value;
  }
}

/** The law of the days before, as told, in the open. */
function lawBefore(forcing: SpotForcing, dayNumber: number): RainLaw {
  const { openFrac } = forcing.rainDoubt!;
  const firstDay = Math.ceil(forcing.startUtcMs / HOUR_MS / 24);
  const days: number[] = [];
  for (let day = Math.max(firstDay, dayNumber - LAW_DAYS); day < dayNumber; day++) {
    days.push(sumOfDayMm(forcing, day) / openFrac);
  }
  return rainLaw(days);
}

function sumOfDayMm({ rainMm, startUtcMs, hourCount }: SpotForcing, dayNumber: number): number {
  const from = dayNumber * 24 - startUtcMs / HOUR_MS;
  let sum = 0;
  for (let hour = Math.max(0, from); hour < Math.min(hourCount, from + 24); hour++) sum += rainMm[hour]!;
  return sum;
}
