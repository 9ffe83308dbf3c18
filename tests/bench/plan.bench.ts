import process from "node:process";
import { type PlanInput, plan } from "../../core/plan/make-plan.ts";
import { demoCase } from "../../demo/demo-case.ts";

/** A summer morning, so that every run of the bench has the same work. */
const NOW_UTC_MS = Date.UTC(2026, 6, 14, 6);

const SIZES = [
  { potCount: 60, targetMs: 150, rounds: 12 },
  { potCount: 1000, targetMs: 2500, rounds: 3 },
  { potCount: 10_000, targetMs: 25_000, rounds: 1 },
];

/** Plans until the engine has done with compiling: its helpers work on for some thirty, and their time would be counted. */
const WARM_UP_PLANS = 30;

/**
 * A full plan of the demonstration's roof, its pots repeated with their diaries; one thread, warmed up. The best of the
 * rounds counts, in processor time, so that whatever else the machine does is left out. The engine's helpers, which
 * collect and compile, are counted; how much they took stands beside it, as does the first plan of a process, cold.
 */
export async function bench(): Promise<{ name: string; lines: string[] }> {
  const made = await demoCase(NOW_UTC_MS);
  if (!made.ok) throw new Error("the demonstration has no weather");
  const cold = timed(() => plan(repeated(made.value, 60)));
  for (let i = 1; i < WARM_UP_PLANS; i++) plan(repeated(made.value, 60));
  const lines = SIZES.map(({ potCount, targetMs, rounds }) => {
    const input = repeated(made.value, potCount);
    const times = Array.from({ length: rounds }, () => timed(() => plan(input)));
    const { allMs, helpersMs } = times.reduce((best, one) => (one.allMs < best.allMs ? one : best));
    const verdict = allMs <= targetMs ? "within" : "over";
    return (
      `${potCount} pots: ${allMs.toFixed(0)} ms (${verdict} ${targetMs} ms), ` +
      `${(allMs / potCount).toFixed(2)} ms a pot; of them helpers ${helpersMs.toFixed(0)} ms`
    );
  });
  const peakMb = process.resourceUsage().maxRSS / 1024;
  return {
    name: "plan, 51 versions of each pot, 7 days",
    lines: [...lines, `60 pots, cold: ${cold.allMs.toFixed(0)} ms`, `peak memory ${peakMb.toFixed(0)} MB`],
  };
}

interface Timed {
  readonly allMs: number;
  /** What other threads of the process than the planning one took of it. */
  readonly helpersMs: number;
}

function timed(work: () => unknown): Timed {
  const [thread, all] = [process.threadCpuUsage(), process.cpuUsage()];
  work();
  const threadMs = totalMs(process.threadCpuUsage(thread));
  const allMs = totalMs(process.cpuUsage(all));
  return { allMs, helpersMs: Math.max(0, allMs - threadMs) };
}

function totalMs({ user, system }: NodeJS.CpuUsage): number {
  return (user + system) / 1000;
}

/** The collection with its pots over and over, room under cover growing along. */
function repeated(input: PlanInput, potCount: number): PlanInput {
  const { collection } = input;
  const times = Math.ceil(potCount / collection.pots.length);
  const pots = Array.from({ length: potCount }, (_, i) => {
    const pot = collection.pots[i % collection.pots.length]!;
    return { ...pot, id: `${pot.id}-${Math.floor(i / collection.pots.length)}` };
  });
  const spots = collection.spots.map((spot) =>
    spot.room?.places === undefined
      ? spot
      : { ...spot, room: { ...spot.room, places: spot.room.places * times } },
  );
  const journal = Array.from({ length: times }, (_, k) =>
    input.journal
      .filter((entry) => k === 0 || entry.potId !== undefined)
      .map((entry) => ({
        ...entry,
        id: `${entry.id}-${k}`,
        ...(entry.potId === undefined ? {} : { potId: `${entry.potId}-${k}` }),
      })),
  ).flat();
  return { ...input, collection: { ...collection, pots, spots }, journal };
}
