import type { PotNow } from "../../pot/pot-now.ts";
import type { SpotDays } from "../days/spot-days.ts";
import { weightOfNight } from "./cold.ts";
import { harmOfDimDay } from "./gloom.ts";
import { harmOfHailDay } from "./hail.ts";
import { harmOfHotHour, TENDER_BY_C } from "./heat.ts";
import type { HarmByTerm } from "./term.ts";
import { harmOfGust, tippingGustMPerS } from "./toppling.ts";

/**
 * Harm that a spot does by itself, whatever the water in the pot: cold, heat, wind, hail, gloom. Pots with the same limits
 * share the sums, so they are remembered for the run by spot and limits.
 */
export interface SpotHarmBook {
  readonly columns: Map<string, Float64Array>;
}

export interface Stander {
  readonly now: PotNow;
  readonly massKg: number;
  readonly tender: boolean;
}

/** Expected harm by plan day of standing at a spot throughout. */
export function spotHarm(book: SpotHarmBook, at: SpotDays, stander: Stander): HarmByTerm {
  return {
    cold: remembered(book, `cold ${at.spot.id} ${limitsOf(stander)}`, () => coldByDay(at, stander)),
    heat: remembered(book, `heat ${at.spot.id} ${heatLimitC(stander)}`, () =>
      heatByDay(at, heatLimitC(stander)),
    ),
    gloom: remembered(book, `gloom ${at.spot.id} ${lightKey(stander)}`, () => gloomByDay(at, stander)),
    wind: windByDay(at, tipMPerS(stander)),
    hail: remembered(book, `hail ${at.spot.id}`, () => hailByDay(at)),
  };
}

/** Gust that tips this pot as it stands. */
export function tipMPerS({ now, massKg }: Pick<Stander, "now" | "massKg">): number {
  const { vessel, pot } = now;
  return tippingGustMPerS({
    massKg,
    baseCm: vessel.baseCm,
    topCm: vessel.topCm,
    heightCm: vessel.heightCm,
    canopyWidthCm: pot.canopyWidthCm,
    plantHeightCm: pot.plantHeightCm,
  });
}

/** Air temperature above which its leaves suffer in full sun. */
export function heatLimitC({ now, tender }: Pick<Stander, "now" | "tender">): number {
  return now.values.heatC - (tender ? TENDER_BY_C : 0);
}

function remembered(book: SpotHarmBook, key: string, make: () => Float64Array): Float64Array {
  const known = book.columns.get(key);
  if (known !== undefined) return known;
  const made = make();
  book.columns.set(key, made);
  return made;
}

function limitsOf({ now }: Stander): string {
  return `${now.values.damageC} ${now.values.killC}`;
}

function lightKey({ now }: Stander): string {
  const { lightMjPerM2PerDay, leaflessIsRest } = now.values;
  return `${lightMjPerM2PerDay} ${leaflessIsRest} ${now.rest.restingShareFrac}`;
}

function coldByDay(at: SpotDays, { now }: Stander): Float64Array {
  return meanByDay(at, (i) => weightOfNight(at.nightMinC[i]!, now.values));
}

/** The last day may be cut short, so its light is not held against the spot. */
function gloomByDay(at: SpotDays, { now }: Stander): Float64Array {
  const { lightMjPerM2PerDay: needMjPerM2, leaflessIsRest } = now.values;
  const { restingShareFrac } = now.rest;
  const byDay = meanByDay(at, (i) =>
    harmOfDimDay({ lightMjPerM2: at.lightMjPerM2[i]!, needMjPerM2, restingShareFrac, leaflessIsRest }),
  );
  for (const [d, day] of at.days.entries()) if (day.toHour - day.fromHour < 20) byDay[d] = 0;
  return byDay;
}

function windByDay(at: SpotDays, tip: number): Float64Array {
  return at.gustMPerS.map((gust) => harmOfGust(gust, tip));
}

function hailByDay({ days, spot }: SpotDays): Float64Array {
  return Float64Array.from(days, ({ hailHour }) => (hailHour === null ? 0 : harmOfHailDay(spot.rainFrac)));
}

function heatByDay(at: SpotDays, limitC: number): Float64Array {
  const { forcing, size, days } = at;
  const byDay = new Float64Array(days.length);
  for (const [d, day] of days.entries()) {
    let sum = 0;
    for (let hour = Math.max(day.fromHour, day.workHours[0] ?? 0); hour < day.toHour; hour++) {
      for (let i = hour * size; i < (hour + 1) * size; i++) {
        const tempC = forcing.tempC[i]!;
        if (tempC > limitC) sum += harmOfHotHour({ tempC, lightMjPerM2: forcing.lightMjPerM2[i]!, limitC });
      }
    }
    byDay[d] = sum / size;
  }
  return byDay;
}

function meanByDay(at: SpotDays, harmAt: (index: number) => number): Float64Array {
  const byDay = new Float64Array(at.days.length);
  for (let d = 0; d < byDay.length; d++) {
    let sum = 0;
    for (let i = d * at.size; i < (d + 1) * at.size; i++) sum += harmAt(i);
    byDay[d] = sum / at.size;
  }
  return byDay;
}
