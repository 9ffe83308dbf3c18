import { killNine } from "./kill-nine-run.ts";
import { printLines, printTable } from "./print.ts";

/* node --import ./service/runtime.mjs tests/drills/kill-nine.ts [kills] [seed] */
const startedMs = performance.now();
const kills = Number(process.argv[2] ?? 300);
const { faults, ...counts } = await killNine({ kills, speed: 6000, seed: Number(process.argv[3] ?? 11) });
printTable([{ ...counts, faults: faults.length }]);
printLines([...faults, `${Math.round((performance.now() - startedMs) / 1000)} s`]);
process.exitCode = faults.length === 0 ? 0 : 1;
