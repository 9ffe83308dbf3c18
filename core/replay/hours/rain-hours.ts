import { type RandomStream, seededRandom, seedFrom } from "../../weather/seeded-random.ts";
import type { DailyWeather, PowerLaw, RainHoursLaw } from "./daily-weather.ts";
import { type DayAxis, monthOf } from "./day-axis.ts";
import { REPLAY_STREAM } from "./streams.ts";

/** An hour counts as wet from here, mm: the hundredth of an inch of the gauges. */
const WET_HOUR_MM = 0.25;
/** How far the peak's scatter goes against that of the wet hours. Chosen by us. */
const AGAINST = 0.6;

/** Rain by hour, mm; each day's hours have the day's sum. */
export function rainHoursMm(
  axis: DayAxis,
  { daily, seed }: { daily: DailyWeather; seed: number },
): Float64Array {
  const out = new Float64Array(axis.hourCount);
  for (const [d, { day, fromHour, toHour }] of axis.days.entries()) {
    const rainMm = daily.rainMm[d]!;
    if (rainMm <= 0) continue;
    const random = seededRandom(seedFrom([seed, REPLAY_STREAM.rain, axis.firstDayNumber + d]));
    const law = daily.climate.rainLaw(monthOf(day));
    out.set(rainOfDayMm({ rainMm, hourCount: toHour - fromHour, law, random }), fromHour);
  }
  return out;
}

/**
 * One day's rain over its hours: so many wet hours and so much in the wettest as the laws say, with their scatter, and
 * the hours gathered into spells that rise and fall. [HOURLYRAIN, our reckoning]
 */
export function rainOfDayMm(day: {
  rainMm: number;
  hourCount: number;
  law: RainHoursLaw;
  random: RandomStream;
}): Float64Array {
  const { rainMm, hourCount, law, random } = day;
  const out = new Float64Array(hourCount);
  const scatter = Math.log(law.scatterFactor);
  const spread = random.normal();
  const most = Math.max(1, Math.min(hourCount, Math.floor(rainMm / WET_HOUR_MM)));
  const drawnHours = powerOf(law.wetHours, rainMm) * Math.exp(scatter * spread);
  const wetHours = Math.min(most, Math.max(1, Math.round(drawnHours)));
  const drawnMost = powerOf(law.maxHourMm, rainMm) * Math.exp(scatter * own(random, spread));
  const amounts = amountsMm({ rainMm, wetHours, maxHourMm: drawnMost });
  const spells = spellsOf({ wetHours, hourCount, spells: law.spells, random });
  const dealt = dealOut(amounts, { spells, main: Math.floor(random.uniform() * spells.length) });
  for (const [k, { start, size }] of spells.entries()) place(out.subarray(start, start + size), dealt[k]!);
  return out;
}

/** A day with more wet hours than the law says mostly has a lower peak, and the other way round. */
function own(random: RandomStream, spread: number): number {
  return -AGAINST * spread + Math.sqrt(1 - AGAINST ** 2) * random.normal();
}

function powerOf({ factor, power }: PowerLaw, rainMm: number): number {
  return factor * rainMm ** power;
}

/** Falling amounts that sum to the day's: a least in every wet hour, the rest a falling series with the peak asked for. */
function amountsMm(of: { rainMm: number; wetHours: number; maxHourMm: number }): number[] {
  const { rainMm, wetHours } = of;
  const least = Math.min(WET_HOUR_MM, rainMm / wetHours);
  const rest = rainMm - least * wetHours;
  if (rest <= 0) return Array<number>(wetHours).fill(rainMm / wetHours);
  const peakShare = Math.min(1, Math.max(1 / wetHours, (of.maxHourMm - least) / rest));
  const ratio = ratioFor(peakShare, wetHours);
  const weights = Array.from({ length: wetHours }, (_, k) => ratio ** k);
  const total = weights.reduce((a, b) => a + b, 0);
  return weights.map((weight) => least + (rest * weight) / total);
}

/** The ratio of a falling series of so many terms whose first is such a share of the sum. */
function ratioFor(firstShare: number, count: number): number {
  let low = 0;
  let high = 1;
  for (let round = 0; round < 40; round++) {
    const middle = (low + high) / 2;
    let total = 0;
    for (let k = 0; k < count; k++) total += middle ** k;
    if (1 / total > firstShare) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

interface Spell {
  readonly start: number;
  readonly size: number;
}

/** Falling amounts dealt to the spells: the main one takes the largest for half of its hours, then all by turns. */
function dealOut(
  amounts: readonly number[],
  { spells, main }: { spells: readonly Spell[]; main: number },
): number[][] {
  const dealt: number[][] = spells.map(() => []);
  let turn = main;
  for (const amount of amounts) {
    if (dealt[main]!.length < spells[main]!.size / 2) {
      dealt[main]!.push(amount);
      continue;
    }
    while (dealt[turn]!.length >= spells[turn]!.size) turn = (turn + 1) % spells.length;
    dealt[turn]!.push(amount);
    turn = (turn + 1) % spells.length;
  }
  return dealt;
}

/** Wet hours shared over spells with dry hours between them. */
function spellsOf(of: {
  wetHours: number;
  hourCount: number;
  spells: number;
  random: RandomStream;
}): Spell[] {
  const { wetHours, hourCount, random } = of;
  const most = Math.min(wetHours, hourCount - wetHours + 1);
  const drawn = 1 + Math.floor(random.uniform() * (2 * of.spells - 1));
  const count = Math.max(1, Math.min(most, drawn));
  const gaps = gapsBetween({ count, dryHours: hourCount - wetHours, random });
  let start = gaps[0]!;
  return Array.from({ length: count }, (_, k) => {
    const size = Math.floor(wetHours / count) + (k < wetHours % count ? 1 : 0);
    const spell = { start, size };
    start += size + (gaps[k + 1] ?? 0);
    return spell;
  });
}

/** Dry hours before, between and after the spells: a stick broken at random, with at least one hour between two. */
function gapsBetween(of: { count: number; dryHours: number; random: RandomStream }): number[] {
  const free = of.dryHours - (of.count - 1);
  const cuts = Array.from({ length: of.count }, () => Math.floor(of.random.uniform() * (free + 1)));
  cuts.sort((a, b) => a - b);
  return cuts.map((cut, k) => (k === 0 ? cut : cut - cuts[k - 1]! + 1));
}

/** Lays falling amounts out from a spell's middle outwards, so that it rises and falls. */
function place(spell: Float64Array, amounts: readonly number[]): void {
  const middle = Math.floor(spell.length / 2);
  for (let k = 0; k < spell.length; k++) {
    const offset = k % 2 === 0 ? k / 2 : -(k + 1) / 2;
    spell[middle + offset] = amounts[k]!;
  }
}
