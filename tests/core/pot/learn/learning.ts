import type { JournalEntry } from "../../../../core/journal/entry.ts";
import { settleEntries } from "../../../../core/journal/settle-entries.ts";
import { DEFAULT_SETTINGS } from "../../../../core/plan/settings.ts";
import { type PotNow, potsNow } from "../../../../core/pot/pot-now.ts";
import { rollOut } from "../../../../core/pot/roll-out.ts";
import { HOUR_MS } from "../../../../core/weather/weather.ts";
import { allKnowing } from "./all-knowing.ts";
import { AHEAD_DAYS, type Case, drawCase, PAST_DAYS, REFILL_FRAC, START } from "./draw-case.ts";
import { type Habit, journalOf } from "./habit-journal.ts";
import { trueDaysToDry } from "./true-pot.ts";

/** The pot as the project sees it after a journal. */
function potOf(of: Case, journal: readonly JournalEntry[]): PotNow {
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
    journal: settleEntries(journal).entries,
    past: new Map([["terrace", of.past]]),
    nowUtcMs: START + PAST_DAYS * 24 * HOUR_MS,
    settings: { ...DEFAULT_SETTINGS, seed: of.seed },
  });
  return pots[0]!;
}

/** Days to dry from full by particle, as the project foretells them. */
function foretoldDays(of: Case, now: PotNow): { days: Float64Array; weightFrac: Float64Array } {
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

function trueDays(of: Case, truth = of.truth): number {
  const days = trueDaysToDry(truth, { et0Mm: of.ahead.et0Mm, fromHour: 0 }, REFILL_FRAC);
  return Number.isNaN(days) ? AHEAD_DAYS : days;
}

function quantile(of: { days: Float64Array; weightFrac: Float64Array }, share: number): number {
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
  /** What the issue of learning aims at, as a share of the unlearned error; null where it sets no aim. */
  readonly aim: number | null;
  /** Mean of |foretold middle / true - 1|, and the same against the unlearned. */
  readonly error: number;
  readonly against: number;
  /** Share of truths within the tenth and ninetieth percentile. */
  readonly covered: number;
  /** Mean width of that range against the true days. */
  readonly width: number;
  readonly doubted: number;
}

const HABITS: readonly { name: string; habit: Habit; aim: number | null }[] = [
  { name: "nothing noted", habit: { kind: "weighs", times: 0 }, aim: null },
  { name: "one weighing", habit: { kind: "weighs", times: 1 }, aim: 0.6 },
  { name: "two weighings", habit: { kind: "weighs", times: 2 }, aim: 0.45 },
  { name: "three weighings", habit: { kind: "weighs", times: 3 }, aim: 0.35 },
  { name: "one poured and drained", habit: { kind: "pours", times: 1 }, aim: null },
  { name: "two poured and drained", habit: { kind: "pours", times: 2 }, aim: null },
  { name: "three poured and drained", habit: { kind: "pours", times: 3 }, aim: 0.35 },
];

type Told = Omit<LearningRow, "name" | "aim" | "against">;

/** One truth and what was foretold of it after each of HABITS. */
export interface Learned {
  readonly mixId: string;
  readonly byHabit: readonly Told[];
}

interface Seeds {
  readonly from: number;
  readonly count: number;
  readonly tested: boolean;
}

/** What the project's cloud learns of each truth. */
export function learnedByCloud(seeds: Seeds): Learned[] {
  return casesOf(seeds).map((of) =>
    learned(of, (journal) => {
      const now = potOf(of, journal);
      return { ...foretoldDays(of, now), doubted: now.doubts.length };
    }),
  );
}

/** What could be learned of each truth from the same notes. */
export function learnedByAllKnowing(seeds: Seeds, potCount: number): Learned[] {
  return casesOf(seeds).map((of) => {
    const { pots, weightFrac } = allKnowing(of, potCount);
    const days = Float64Array.from(pots, (pot) => trueDays(of, pot));
    return learned(of, (journal) => ({ days, weightFrac: weightFrac(journal), doubted: 0 }));
  });
}

/** The table of learning over some truths. */
export function learningRows(truths: readonly Learned[]): LearningRow[] {
  const mean = (habit: number, what: keyof Told) =>
    truths.reduce((sum, { byHabit }) => sum + byHabit[habit]![what], 0) / truths.length;
  return HABITS.map(({ name, aim }, i) => ({
    name,
    aim,
    error: mean(i, "error"),
    against: mean(i, "error") / mean(0, "error"),
    covered: mean(i, "covered"),
    width: mean(i, "width"),
    doubted: mean(i, "doubted"),
  }));
}

function casesOf({ from, count, tested }: Seeds): Case[] {
  return Array.from({ length: count }, (_, i) => drawCase(from + i, tested));
}

function learned(
  of: Case,
  foretell: (journal: readonly JournalEntry[]) => {
    days: Float64Array;
    weightFrac: Float64Array;
    doubted: number;
  },
): Learned {
  const days = trueDays(of);
  const byHabit = HABITS.map(({ habit }) => {
    const foretold = foretell(journalOf(of, habit));
    const [low, mid, high] = [0.1, 0.5, 0.9].map((share) => quantile(foretold, share)) as [
      number,
      number,
      number,
    ];
    return {
      error: Math.abs(mid / days - 1),
      covered: low <= days && days <= high ? 1 : 0,
      width: (high - low) / days,
      doubted: foretold.doubted,
    };
  });
  return { mixId: of.mix.id, byHabit };
}
