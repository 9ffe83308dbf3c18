import type { JournalEntry } from "../../journal/entry.ts";
import type { SettledHours } from "../ladder/settle-hours.ts";
import { rainClimate, wetHoursOfDay } from "../members/rain-spell-shape.ts";
import { type ReadingSpan, readingSpan, siteReadings } from "./reading-span.ts";

/** Below this a model's rain has no shape worth keeping, mm. */
const SHAPELESS_BELOW_MM = 0.1;

/**
 * Makes the past rain of each gauge reading's span add up to what was read. Hours keep the model's shape; where the
 * model had it dry, the rain is put into the hours that looked most like it. Hours that an earlier reading has settled
 * are left to it, and only the rest of a later, longer reading is spread. Columns are changed.
 * @returns 1 in each hour that a reading settled; null without any
 */
export function correctRain(settled: SettledHours, journal: readonly JournalEntry[]): Uint8Array | null {
  const { rainMm } = settled.columns;
  const fixed = new Uint8Array(settled.hourCount);
  for (const { atUtcMs, body } of siteReadings(journal, "rain-gauge")) {
    const span = readingSpan(settled, { atUtcMs, ...body });
    if (!span || !(body.rainMm >= 0)) continue;
    const sums = sumsIn(rainMm, fixed, span);
    const wanted = Math.max(0, body.rainMm - sums.fixedMm);
    if (wanted === 0 || sums.freeMm >= SHAPELESS_BELOW_MM) {
      const factor = sums.freeMm > 0 ? wanted / sums.freeMm : 0;
      forFreeHours(fixed, span, (hour) => {
        rainMm[hour]! *= factor;
      });
    } else pourIntoLikelyHours(settled, fixed, { ...span, rainMm: wanted });
    fixed.fill(1, span.fromHour, span.toHour);
  }
  return fixed.includes(1) ? fixed : null;
}

function sumsIn(rainMm: Float64Array, fixed: Uint8Array, span: ReadingSpan) {
  let fixedMm = 0;
  let freeMm = 0;
  for (let hour = span.fromHour; hour < span.toHour; hour++) {
    if (fixed[hour]) fixedMm += rainMm[hour]!;
    else freeMm += rainMm[hour]!;
  }
  return { fixedMm, freeMm };
}

function forFreeHours(fixed: Uint8Array, span: ReadingSpan, change: (hour: number) => void): void {
  for (let hour = span.fromHour; hour < span.toHour; hour++) if (!fixed[hour]) change(hour);
}

/** One run of hours of published length, where chance of rain, weather code and cloud speak loudest for it. */
function pourIntoLikelyHours(
  settled: SettledHours,
  fixed: Uint8Array,
  of: ReadingSpan & { rainMm: number },
): void {
  const { rainMm, tempC } = settled.columns;
  const free: number[] = [];
  forFreeHours(fixed, of, (hour) => {
    rainMm[hour] = 0;
    free.push(hour);
  });
  if (free.length === 0) return;
  const climate = rainClimate(settled.site.latDeg, tempC[free[0]!]!);
  const length = Math.min(free.length, wetHoursOfDay(of.rainMm, climate));
  const start = likeliestStart(
    free.map((hour) => likelihood(settled, hour)),
    length,
  );
  for (const hour of free.slice(start, start + length)) rainMm[hour] = of.rainMm / length;
}

function likelihood({ columns }: SettledHours, hour: number): number {
  const chance = columns.feedRainChanceFrac[hour]!;
  const falling = columns.weatherCode[hour]! >= 51 ? 1 : 0;
  return falling + (Number.isNaN(chance) ? 0 : chance) + 0.1 * columns.cloudFrac[hour]!;
}

function likeliestStart(weights: readonly number[], length: number): number {
  let best = 0;
  let bestSum = Number.NEGATIVE_INFINITY;
  let sum = 0;
  for (let end = 0; end < weights.length; end++) {
    sum += weights[end]!;
    if (end >= length) sum -= weights[end - length]!;
    // A hair more is asked of a later run, so that equal runs are settled by rule and not by rounding.
    if (end >= length - 1 && sum > bestSum + 1e-9) {
      bestSum = sum;
      best = end - length + 1;
    }
  }
  return best;
}
