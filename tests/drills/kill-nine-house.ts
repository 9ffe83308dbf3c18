import { readSettings } from "../../service/config.ts";
import { startService } from "../../service/start-service.ts";

/**
 * The service as it is, in a process of its own that a drill can kill. Only its clock is quicker: `LEEBENCH_DRILL_CLOCK`
 * holds the simulated start, how many times faster it runs, and the real start if it runs on while nobody lives in the
 * house. It beats without a pause, and tells of each beat that is over when it began.
 */
const { LEEBENCH_DRILL_CLOCK, ...env } = process.env;
const clock = JSON.parse(LEEBENCH_DRILL_CLOCK ?? "{}") as {
  realMs?: number;
  simulatedMs: number;
  speed: number;
};
const startMs = clock.realMs ?? Date.now();
const now = () => Math.round(clock.simulatedMs + (Date.now() - startMs) * clock.speed);

const settings = readSettings(env);
if (!settings.ok) throw new Error(JSON.stringify(settings.problems));
const service = await startService(settings.value, { now, beating: false });
process.stdout.write(`${service.url} ${startMs}\n`);
for (;;) {
  const begunMs = now();
  await service.beatNow();
  process.stdout.write(`${begunMs}\n`);
  await new Promise((resolve) => setTimeout(resolve, 5));
}
