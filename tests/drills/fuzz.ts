import { fuzz } from "./fuzz-run.ts";
import { printLines, printTable } from "./print.ts";

/* node --expose-gc --import ./service/runtime.mjs tests/drills/fuzz.ts [requests] [seed] */
const startedMs = performance.now();
const { faults, heapMb, ...counts } = await fuzz({
  requests: Number(process.argv[2] ?? 200_000),
  seed: Number(process.argv[3] ?? 1),
});
printTable([
  {
    ...counts,
    firstHeapMb: heapMb[1] ?? heapMb[0] ?? 0,
    lastHeapMb: heapMb.at(-1) ?? 0,
    mostHeapMb: Math.max(...heapMb),
    faults: faults.length,
  },
]);
printLines([...faults, `${Math.round((performance.now() - startedMs) / 1000)} s`]);
process.exitCode = faults.length === 0 ? 0 : 1;
