import type { JournalEntry } from "../../journal/entry.ts";
import type { CalendarDay } from "../../site/site.ts";
import type { Spread } from "../../weather/spread.ts";
import { type BrierParts, brierParts, frequencyOf, type Told } from "./brier.ts";
import { crps } from "./crps.ts";
import { relativeValue, tableAbove } from "./relative-value.ts";
import { toldDry } from "./told-dry.ts";
import type { ToldPlan } from "./told-plan.ts";
import { toldRain } from "./told-rain.ts";

/** What was told in one band, and how often it came true. */
export interface ToldBand {
  readonly toldFrac: number;
  readonly cameTrueFrac: number;
  readonly count: number;
}

export interface Kept {
  readonly count: number;
  /** Bands with anything in them, rising. */
  readonly bands: readonly ToldBand[];
  readonly brier: BrierParts | null;
  /** The band to say in one sentence; null while there is too little to say anything. */
  readonly telling: ToldBand | null;
}

/** How far the shares told in past plans came true. */
export interface Calibration {
  /** Rain of tomorrow, 1 mm and more; `count` is days. */
  readonly rain: Kept & {
    /** Error of the amounts, mm: the score of their three percentiles, mean of the days; null without any. */
    readonly crpsMm: number | null;
    /** Of what perfect foresight would save somebody for whom shelter costs a fifth of the loss; null when undefined. */
    readonly valueFrac: number | null;
  };
  /** Pots at their refill point, against how heavy they felt; `count` is pots felt. */
  readonly dry: Kept;
}

/** Limits between bands: those of the words for confidence. */
const BAND_LIMITS = [0.05, 0.2, 0.4, 0.6, 0.8, 0.95] as const;
/** Tellings of one band below which nothing is said of it. Chosen by us: ten show a frequency to about 15 %. */
const LEAST_TO_TELL = 10;
/** Cost of shelter over the loss it averts. Chosen by us. */
const COST_FRAC = 0.2;
/** Shares of the cloud that the three percentiles of a spread stand for. */
const SPREAD_WEIGHTS = [0.3, 0.4, 0.3] as const;

/**
 * Scores past plans against what came.
 * @param journal corrections and undos already carried out
 */
export function calibration(input: {
  plans: readonly ToldPlan[];
  rainMmOn: ReadonlyMap<CalendarDay, number>;
  journal: readonly JournalEntry[];
}): Calibration {
  const rain = toldRain(input.plans, input.rainMmOn);
  const errorsMm = rain.map(({ rainMm, cameMm }) => crpsOfSpread(rainMm, cameMm));
  return {
    rain: {
      ...keptOf(rain),
      crpsMm: knownOr(errorsMm.reduce((sum, errorMm) => sum + errorMm, 0) / errorsMm.length),
      valueFrac: knownOr(relativeValue(tableAbove(rain, COST_FRAC), COST_FRAC)),
    },
    dry: keptOf(toldDry(input.plans, input.journal)),
  };
}

/** A plan is text in the end, and text has no NaN. */
function knownOr(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}

function crpsOfSpread({ low, mid, high }: Spread, came: number): number {
  return crps({ values: [low, mid, high], weightFrac: SPREAD_WEIGHTS }, came);
}

/** What was told, by bands, with the one that says most. */
export function keptOf(all: readonly Told[]): Kept {
  const bands = bandsOf(all);
  return { count: all.length, bands, brier: brierParts(all), telling: tellingBand(bands) };
}

function bandsOf(all: readonly Told[]): ToldBand[] {
  const groups: Told[][] = Array.from({ length: BAND_LIMITS.length + 1 }, () => []);
  for (const one of all) groups[BAND_LIMITS.filter((limit) => one.toldFrac >= limit).length]!.push(one);
  return groups
    .filter((group) => group.length > 0)
    .map((group) => ({
      toldFrac: group.reduce((sum, { toldFrac }) => sum + toldFrac, 0) / group.length,
      cameTrueFrac: frequencyOf(group),
      count: group.length,
    }));
}

/** Of the bands with enough in them the one nearest to seven in ten: what a grower acts on and doubts most. */
function tellingBand(bands: readonly ToldBand[]): ToldBand | null {
  const farFrom = ({ toldFrac }: ToldBand) => Math.abs(toldFrac - ACTED_ON_FRAC);
  const enough = bands.filter(({ count }) => count >= LEAST_TO_TELL);
  return enough.sort((a, b) => farFrom(a) - farFrom(b))[0] ?? null;
}

const ACTED_ON_FRAC = 0.7;
