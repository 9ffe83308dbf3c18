import type { EntryBody, JournalEntry } from "../../../../core/journal/entry.ts";
import { type RandomStream, seededRandom } from "../../../../core/weather/seeded-random.ts";
import { HOUR_MS } from "../../../../core/weather/weather.ts";
import { type Case, PAST_DAYS, REFILL_FRAC, START } from "./draw-case.ts";
import { type TruePot, trueDaysToDry, trueHour } from "./true-pot.ts";

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

/** Errors of the scale and of the jug, and how far from full a pot may stay that ran through. */
export const DOING = { scaleFrac: 0.005, scaleKg: 0.005, jugFrac: 0.03, shortFrac: 0.03 } as const;

/** What a pot that is watered until it runs through holds then. */
export function filledMl(truth: TruePot, waterMl: number, shortFrac: number): number {
  const shedMl = Math.max(0, 1 - waterMl / (truth.shedsBelowMl || 1)) * 2 * truth.shedsMl;
  return Math.max(waterMl, truth.capacityMl * (1 - shortFrac) - shedMl);
}

function weigh(truth: TruePot, waterMl: number, { hour, random, note }: Doing): void {
  const { scaleFrac, scaleKg } = DOING;
  const massKg =
    (truth.dryMassKg + waterMl / 1000) * (1 + scaleFrac * random.normal()) + scaleKg * random.normal();
  note(hour, { kind: "weighed", massKg });
}

/** Waters until it runs through; a pot of the trade comes within a few hundredths of full. */
function pour(
  truth: TruePot,
  waterMl: number,
  { hour, random, note, told }: Doing & { told: boolean },
): number {
  const full = filledMl(truth, waterMl, DOING.shortFrac * random.uniform());
  const kept = full - waterMl;
  const pouredMl = Math.round(kept * 1.25 + 50);
  const drainedMl = Math.max(0, Math.round((pouredMl - kept) * (1 + DOING.jugFrac * random.normal())));
  if (told) note(hour, { kind: "watered", given: { kind: "poured-drained", pouredMl, drainedMl } });
  else note(hour, { kind: "watered", given: { kind: "ran-through" } });
  return full;
}
