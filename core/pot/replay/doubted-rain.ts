import type { Settings } from "../../plan/settings.ts";
import type { SpotForcing } from "../../site/forcing.ts";
import { forecastError } from "../../weather/members/forecast-error.ts";
import {
  dryScores,
  MOST_STRETCH,
  type RainLaw,
  rainFallenMm,
  rainLaw,
  scoreOfRain,
  WET_DAY_MM,
  wetScore,
} from "../../weather/members/rain-law.ts";
import { seededRandom, seedFrom } from "../../weather/seeded-random.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { OwnRain } from "../balance/run-hours.ts";
import { spreadNormals } from "../learn/draw-particles.ts";

/** Of its own among the streams of a seed. */
const STREAM = 7401;
/** Days before a day that its law of rain is read off. Chosen by us: a season. */
const LAW_DAYS = 60;
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
export function doubtedRain(
  batch: { forcing: SpotForcing; fromHour: number; toHour: number },
  asked: Asked,
): OwnRain | null {
  const { forcing, fromHour, toHour } = batch;
  const { rainDoubt, memberCount } = forcing;
  if (rainDoubt === undefined || rainDoubt.openFrac <= 0 || memberCount !== 1 || asked.size === 1)
    return null;
  const kept = keptFor(forcing, asked);
  for (let hour = fromHour; hour < toHour; hour++) {
    if (kept.isFilled[hour] === 1) continue;
    kept.isFilled[hour] = 1;
    kept.rains[hour] = fillHour(kept, { forcing, hour, asked }) ? 1 : 0;
  }
  return kept;
}

interface Kept extends OwnRain {
  readonly asked: Asked;
  readonly isFilled: Uint8Array;
  readonly days: Map<number, DayOfRain>;
}

/** The rain of a forcing as far as it was asked for; every pot at its spot shares it. */
const KEPT = new WeakMap<SpotForcing, Kept>();

function keptFor(forcing: SpotForcing, asked: Asked): Kept {
  const known = KEPT.get(forcing);
  if (known?.asked.size === asked.size && known.asked.settings.seed === asked.settings.seed) return known;
  const { hourCount } = forcing;
  const made = {
    asked,
    rainMm: new Float64Array(hourCount * asked.size),
    rains: new Uint8Array(hourCount),
    isFilled: new Uint8Array(hourCount),
    days: new Map<number, DayOfRain>(),
  };
  KEPT.set(forcing, made);
  return made;
}

/** Writes one hour of all particles; whether it rains in any. */
function fillHour(
  { rainMm, days }: Kept,
  { forcing, hour, asked }: { forcing: SpotForcing; hour: number; asked: Asked },
): boolean {
  const { size } = asked;
  const toldMm = forcing.rainMm[hour]!;
  const at = hour * size;
  if (forcing.rainDoubt!.gauged?.[hour] === 1) {
    rainMm.fill(toldMm, at, at + size);
    return toldMm > 0;
  }
  const dayNumber = Math.floor((forcing.startUtcMs / HOUR_MS + hour) / 24);
  const day = days.get(dayNumber) ?? drawDay(forcing, dayNumber, asked);
  days.set(dayNumber, day);
  const { factor, showerMmPerH, showerFromHour } = day;
  const showers = showerMmPerH !== null && hour >= showerFromHour && hour < showerFromHour + SHOWER_HOURS;
  let rains = false;
  for (let k = 0; k < size; k++) {
    const fallenMm =
      (toldMm > 0 ? toldMm * (factor === null ? 1 : factor[k]!) : 0) + (showers ? showerMmPerH[k]! : 0);
    rainMm[at + k] = fallenMm;
    if (fallenMm > 0) rains = true;
  }
  return rains;
}

function drawDay(forcing: SpotForcing, dayNumber: number, { settings, latDeg, size }: Asked): DayOfRain {
  const { openFrac } = forcing.rainDoubt!;
  const random = seededRandom(seedFrom([settings.seed, STREAM, dayNumber]));
  const errors = spreadNormals(size, random);
  const law = lawBefore(forcing, dayNumber);
  const correlation = forecastError(0, latDeg).rainCorrelation;
  const toldMm = sumOfDayMm(forcing, dayNumber) / openFrac;
  const fallenMm = (toldScore: number, k: number) =>
    rainFallenMm(law, { toldScore, correlation, error: errors[k]! });
  if (toldMm >= WET_DAY_MM) {
    const score = scoreOfRain(law, toldMm);
    const factor = errors.map((_, k) => Math.min(MOST_STRETCH, fallenMm(score, k) / toldMm));
    return { factor, showerMmPerH: null, showerFromHour: 0 };
  }
  const toldScore = dryScores(law);
  const mostScore = wetScore(law);
  const showerMmPerH = errors.map((_, k) => {
    const drawFrac = random.uniform();
    // Most stay dry however near to rain the day was told; for those the score need not be looked for.
    if (fallenMm(mostScore, k) === 0) return 0;
    return (openFrac * fallenMm(toldScore(drawFrac), k)) / SHOWER_HOURS;
  });
  const clockHour = Math.floor((25 - SHOWER_HOURS) * random.uniform());
  const showerFromHour = dayNumber * 24 + clockHour - forcing.startUtcMs / HOUR_MS;
  return { factor: null, showerMmPerH, showerFromHour };
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
