import type { JournalEntry } from "../../../../core/journal/entry.ts";
import { seededRandom } from "../../../../core/weather/seeded-random.ts";
import { HOUR_MS } from "../../../../core/weather/weather.ts";
import { type Case, plainly, START } from "./draw-case.ts";
import { DOING, filledMl } from "./habit-journal.ts";
import { drawTruePot, type TruePot, trueDryMass, trueHour } from "./true-pot.ts";

/**
 * A learner that knows what no pot can know: the invented law, the spreads that truths are drawn with and the errors
 * of scale and jug. It draws many truths and weighs them by what was noted, so that its error is the least that the
 * same notes allow. What the project's own cloud misses beyond it is the cloud's fault; the rest is not in the notes.
 */
export interface AllKnowing {
  readonly pots: readonly TruePot[];
  /** Weights by pot once all that was noted is known. */
  weightFrac(journal: readonly JournalEntry[]): Float64Array;
}

export function allKnowing(of: Case, potCount: number): AllKnowing {
  const random = seededRandom(of.seed + 999);
  const plain = plainly(of);
  const pots = Array.from({ length: potCount }, () => drawTruePot({ ...plain, random }));
  const dryMass = trueDryMass(plain);
  return {
    pots,
    weightFrac(journal) {
      const notes = notesByHour(journal);
      const logs = pots.map((pot) => logLikelihood(pot, { notes, et0Mm: of.past.et0Mm, dryMass }));
      const most = Math.max(...logs);
      const likely = Float64Array.from(logs, (log) => Math.exp(log - most));
      const sum = likely.reduce((total, one) => total + one, 0);
      return likely.map((one) => one / sum);
    },
  };
}

interface Noted {
  readonly notes: ReadonlyMap<number, readonly JournalEntry[]>;
  readonly et0Mm: Float64Array;
  readonly dryMass: { meanKg: number; sdKg: number };
}

/** The dry weight is not drawn but reckoned with as a normal quantity, so that few pots go a long way. */
function logLikelihood(pot: TruePot, { notes, et0Mm, dryMass }: Noted): number {
  const lastHour = Math.max(0, ...notes.keys());
  let { meanKg } = dryMass;
  let variance = dryMass.sdKg ** 2;
  let waterMl = pot.capacityMl;
  let log = 0;
  for (let hour = 2; hour <= lastHour; hour++) {
    for (const { body } of notes.get(hour) ?? []) {
      if (body.kind === "weighed") {
        const dryKg = body.massKg - waterMl / 1000;
        const noise = (DOING.scaleFrac * body.massKg) ** 2 + DOING.scaleKg ** 2;
        log += logNormal(dryKg - meanKg, variance + noise);
        const gain = variance / (variance + noise);
        meanKg += gain * (dryKg - meanKg);
        variance *= 1 - gain;
      } else if (body.kind === "watered") {
        const full = filledMl(pot, waterMl, DOING.shortFrac / 2);
        if (body.given.kind === "poured-drained") {
          const { pouredMl, drainedMl } = body.given;
          const keptMl = full - waterMl;
          const shortSd = (DOING.shortFrac / Math.sqrt(12)) * pot.capacityMl;
          const noise = shortSd ** 2 + (DOING.jugFrac * (pouredMl - keptMl)) ** 2 + 1;
          log += logNormal(pouredMl - drainedMl - keptMl, noise);
        }
        waterMl = full;
      }
    }
    waterMl = trueHour(pot, waterMl, { et0Mm: et0Mm[hour]!, rainMl: 0 });
  }
  return log;
}

function logNormal(off: number, variance: number): number {
  return -0.5 * ((off * off) / variance + Math.log(variance));
}

function notesByHour(journal: readonly JournalEntry[]): Map<number, JournalEntry[]> {
  const notes = new Map<number, JournalEntry[]>();
  let lastSeen = 0;
  for (const entry of journal) {
    const hour = (entry.atUtcMs - START) / HOUR_MS;
    notes.set(hour, [...(notes.get(hour) ?? []), entry]);
    const { body } = entry;
    if (body.kind === "weighed" || (body.kind === "watered" && body.given.kind === "poured-drained"))
      lastSeen = hour;
  }
  for (const hour of notes.keys()) if (hour > lastSeen) notes.delete(hour);
  return notes;
}
