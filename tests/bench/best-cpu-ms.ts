import process from "node:process";

/**
 * Processor time of the fastest round, ms. The machine is shared: time on the clock would count the neighbours, and
 * only the fastest round had the caches to itself.
 */
export function bestCpuMs(of: { rounds: number; warmUps: number }, once: () => void): number {
  for (let round = 0; round < of.warmUps; round++) once();
  let best = Number.POSITIVE_INFINITY;
  for (let round = 0; round < of.rounds; round++) {
    const began = process.cpuUsage();
    once();
    const { user, system } = process.cpuUsage(began);
    best = Math.min(best, (user + system) / 1000);
  }
  return best;
}
