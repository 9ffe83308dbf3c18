import type { EntryBody, JournalEntry } from "../../../../core/journal/entry.ts";
import type { Mix } from "../../../../core/mix/mix.ts";
import { DEFAULT_SETTINGS } from "../../../../core/plan/settings.ts";
import { canopyAreaCm2 } from "../../../../core/plant/canopy.ts";
import { plantMassKg } from "../../../../core/plant/plant-mass.ts";
import { type PotNow, potsNow } from "../../../../core/pot/pot-now.ts";
import { rollOut } from "../../../../core/pot/roll-out.ts";
import type { Vessel } from "../../../../core/pot/vessel.ts";
import type { SpotForcing } from "../../../../core/site/forcing.ts";
import { type RandomStream, seededRandom } from "../../../../core/weather/seeded-random.ts";
import { HOUR_MS } from "../../../../core/weather/weather.ts";
import { forcing, GRITTY, groupValues, inVesselOf, PEATY, vessel } from "../build-pot.ts";
import { drawTruePot, type TruePot, trueDaysToDry, trueHour } from "./true-pot.ts";

const START = Date.UTC(2026, 5, 1);
const PAST_DAYS = 30;
const AHEAD_DAYS = 60;
const REFILL_FRAC = 0.2;

export interface Case {
  readonly truth: TruePot;
  readonly past: SpotForcing;
  readonly ahead: SpotForcing;
  readonly vessel: Vessel;
  readonly mix: Mix;
  readonly groupId: string;
  readonly canopyWidthCm: number;
  readonly plantHeightCm: number;
  readonly seed: number;
}

/** One invented truth with its weather, which is known, so that only the pot is to be learned. */
export function drawCase(seed: number, tested = false): Case {
  const random = seededRandom(seed);
  const pick = <T>(from: readonly T[]) => from[Math.floor(random.uniform() * from.length)]!;
  const topCm = 14 + 18 * random.uniform();
  const of = vessel({
    topCm,
    baseCm: 0.75 * topCm,
    heightCm: (0.8 + 0.3 * random.uniform()) * topCm,
    material: pick(["plastic", "plastic", "glazed", "unglazed"] as const),
    emptyMassKg: 0.5,
  });
  const groupId = pick(["desert-rose", "citrus", "hibiscus", "pelargonium", "jade"]);
  const values = groupValues(groupId);
  const mix = tested ? testedMix(values.leafy ? PEATY : GRITTY, of) : values.leafy ? PEATY : GRITTY;
  const canopyWidthCm = (0.8 + 0.7 * random.uniform()) * topCm;
  const plantHeightCm = canopyWidthCm;
  const plant = { canopyWidthCm, plantHeightCm };
  const truth = drawTruePot({
    inVessel: inVesselOf(mix, of),
    values,
    canopyAreaCm2: canopyAreaCm2(plant),
    plantMassKg: plantMassKg(plant, values),
    porous: of.material === "unglazed",
    random,
  });
  const weather = (hourCount: number, startUtcMs: number) => {
    const days = Float64Array.from({ length: hourCount / 24 + 1 }, () => 0.6 + 0.8 * random.uniform());
    return forcing({
      hourCount,
      startUtcMs,
      et0Mm: (hour) => days[Math.floor(hour / 24)]! * dayCourse(hour),
    });
  };
  const past = weather(PAST_DAYS * 24, START);
  const ahead = weather(AHEAD_DAYS * 24, START + PAST_DAYS * 24 * HOUR_MS);
  return { truth, past, ahead, vessel: of, mix, groupId, canopyWidthCm, plantHeightCm, seed };
}

/** The same mix with the grower's own test, which found what the library says. */
function testedMix(mix: Mix, of: Vessel): Mix {
  const { volumeMl, soakedMassKg, dryMassKg, capacityMl } = inVesselOf(mix, of).hold;
  const soakedMl = 1000 * (soakedMassKg - dryMassKg);
  return { ...mix, test: { potMl: volumeMl, addedMl: soakedMl, drainedMl: soakedMl - capacityMl } };
}

function dayCourse(hour: number): number {
  return 0.004 + 0.65 * Math.max(0, Math.sin((((hour % 24) - 6) / 12) * Math.PI));
}

/** What the grower does and reads over the past days. */
export type Habit =
  | { readonly kind: "weighs"; readonly times: number }
  | { readonly kind: "pours"; readonly times: number };

/** The journal that a truth and a habit lead to, with errors of scale and jug. */
export function journalOf(of: Case, habit: Habit): JournalEntry[] {
  const random = seededRandom(of.seed + 77);
  const entries: JournalEntry[] = [];
  const note = (hour: number, body: EntryBody) => {
    const atUtcMs = START + hour * HOUR_MS;
    entries.push({ id: `e${entries.length}`, atUtcMs, recordedUtcMs: atUtcMs, potId: "pot", body });
  };
  note(1, {
    kind: "planted",
    vessel: of.vessel,
    mixId: of.mix.id,
    roots: "undisturbed",
    mixWet: "watered-in",
  });
  const dryDays = trueDaysToDry(of.truth, { et0Mm: of.past.et0Mm, fromHour: 31 }, REFILL_FRAC);
  const gapHours = 24 * Math.max(2, Math.round(Math.min(8, Number.isNaN(dryDays) ? 8 : dryDays)));
  let waterMl = of.truth.capacityMl;
  let done = 0;
  let wasDue = false;
  for (let hour = 2; hour < PAST_DAYS * 24; hour++) {
    const due = hour >= 7 + gapHours && (hour - 7) % gapHours === 0;
    if (habit.kind === "weighs" && done < habit.times && (due || wasDue)) {
      done++;
      weigh(of.truth, waterMl, { hour, random, note });
    }
    wasDue = due;
    if (due && (habit.kind === "weighs" || done < habit.times)) {
      if (habit.kind === "pours") done++;
      waterMl = pour(of.truth, waterMl, { hour, random, note, told: habit.kind === "pours" });
    }
    waterMl = trueHour(of.truth, waterMl, { et0Mm: of.past.et0Mm[hour]!, rainMl: 0 });
  }
  return entries;
}

interface Doing {
  readonly hour: number;
  readonly random: RandomStream;
  readonly note: (hour: number, body: EntryBody) => void;
}

function weigh(truth: TruePot, waterMl: number, { hour, random, note }: Doing): void {
  const massKg = (truth.dryMassKg + waterMl / 1000) * (1 + 0.005 * random.normal()) + 0.005 * random.normal();
  note(hour, { kind: "weighed", massKg });
}

/** Waters until it runs through; a pot of the trade comes within a few hundredths of full. */
function pour(
  truth: TruePot,
  waterMl: number,
  { hour, random, note, told }: Doing & { told: boolean },
): number {
  const shedMl = Math.max(0, 1 - waterMl / (truth.shedsBelowMl || 1)) * 2 * truth.shedsMl;
  const full = truth.capacityMl * (1 - 0.03 * random.uniform()) - shedMl;
  const kept = Math.max(0, full - waterMl);
  const pouredMl = Math.round(kept * 1.25 + 50);
  const drainedMl = Math.max(0, Math.round((pouredMl - kept) * (1 + 0.03 * random.normal())));
  if (told) note(hour, { kind: "watered", given: { kind: "poured-drained", pouredMl, drainedMl } });
  else note(hour, { kind: "watered", given: { kind: "ran-through" } });
  return Math.max(waterMl, full);
}

/** The pot as the project sees it after a journal. */
export function potOf(of: Case, journal: readonly JournalEntry[]): PotNow {
  const pot = {
    id: "pot",
    name: "Pot",
    groupId: of.groupId,
    canopyWidthCm: of.canopyWidthCm,
    plantHeightCm: of.plantHeightCm,
    firstSpotId: "terrace",
  };
  const { pots } = potsNow({
    collection: {
      site: { id: "s", name: "", latDeg: 43, lonDeg: 5, elevationM: 0, zone: "UTC" },
      spots: [{ id: "terrace" } as never],
      mixes: [of.mix],
      pots: [pot],
    },
    journal,
    past: new Map([["terrace", of.past]]),
    nowUtcMs: START + PAST_DAYS * 24 * HOUR_MS,
    settings: { ...DEFAULT_SETTINGS, seed: of.seed },
  });
  return pots[0]!;
}

/** Days to dry from full by particle, as the project foretells them. */
export function foretoldDays(of: Case, now: PotNow): { days: Float64Array; weightFrac: Float64Array } {
  const hourCount = of.ahead.hourCount;
  const stretches = [{ fromHour: 0, forcing: of.ahead }];
  const { size, weightFrac, capacityFactor } = now.cloud;
  const { unusableMl, usableMl, capacityMl } = now.inVessel.hold;
  const full = {
    ...now.cloud,
    waterMl: capacityFactor.map((factor) => factor * capacityMl),
    surfaceDepletionMm: new Float64Array(size),
  };
  const course = rollOut({ now: { ...now, cloud: full }, stretches, pours: [], hourCount });
  const days = new Float64Array(size).fill(AHEAD_DAYS);
  for (let k = 0; k < size; k++) {
    const limitMl = capacityFactor[k]! * (unusableMl + REFILL_FRAC * usableMl);
    for (let hour = 0; hour < hourCount; hour++) {
      if (course.waterMl[hour * size + k]! > limitMl) continue;
      days[k] = (hour + 1) / 24;
      break;
    }
  }
  return { days, weightFrac };
}

export function trueDays(of: Case): number {
  const days = trueDaysToDry(of.truth, { et0Mm: of.ahead.et0Mm, fromHour: 0 }, REFILL_FRAC);
  return Number.isNaN(days) ? AHEAD_DAYS : days;
}

export function quantile(of: { days: Float64Array; weightFrac: Float64Array }, share: number): number {
  const order = [...of.days.keys()].sort((a, b) => of.days[a]! - of.days[b]!);
  let sum = 0;
  for (const k of order) {
    sum += of.weightFrac[k]!;
    if (sum >= share) return of.days[k]!;
  }
  return of.days[order.at(-1)!]!;
}

export interface LearningRow {
  readonly name: string;
  /** Mean of |foretold middle / true - 1|, and the same against the unlearned. */
  readonly error: number;
  readonly against: number;
  /** Share of truths within the tenth and ninetieth percentile. */
  readonly covered: number;
  /** Mean width of that range against the true days. */
  readonly width: number;
  readonly doubted: number;
}

export const HABITS: readonly { readonly name: string; readonly habit: Habit; readonly target: number }[] = [
  { name: "nothing noted", habit: { kind: "weighs", times: 0 }, target: 1 },
  { name: "one weighing", habit: { kind: "weighs", times: 1 }, target: 0.6 },
  { name: "two weighings", habit: { kind: "weighs", times: 2 }, target: 0.45 },
  { name: "three weighings", habit: { kind: "weighs", times: 3 }, target: 0.35 },
  { name: "one poured and drained", habit: { kind: "pours", times: 1 }, target: 0.6 },
  { name: "two poured and drained", habit: { kind: "pours", times: 2 }, target: 0.45 },
  { name: "three poured and drained", habit: { kind: "pours", times: 3 }, target: 0.35 },
];

/** The table of learning over a span of seeds. */
export function learningTable(seeds: {
  readonly from: number;
  readonly count: number;
  readonly tested: boolean;
}): LearningRow[] {
  const cases = Array.from({ length: seeds.count }, (_, i) => drawCase(seeds.from + i, seeds.tested));
  let unlearned = Number.NaN;
  return HABITS.map(({ name, habit }) => {
    let error = 0;
    let covered = 0;
    let width = 0;
    let doubted = 0;
    for (const of of cases) {
      const now = potOf(of, journalOf(of, habit));
      const foretold = foretoldDays(of, now);
      const days = trueDays(of);
      error += Math.abs(quantile(foretold, 0.5) / days - 1) / cases.length;
      const low = quantile(foretold, 0.1);
      const high = quantile(foretold, 0.9);
      if (low <= days && days <= high) covered += 1 / cases.length;
      width += (high - low) / days / cases.length;
      doubted += now.doubts.length / cases.length;
    }
    if (Number.isNaN(unlearned)) unlearned = error;
    return { name, error, against: error / unlearned, covered, width, doubted };
  });
}
