import { FAULT_CASES, faultRow } from "../service/feed/fault-matrix.ts";
import { printLines, printTable } from "./print.ts";

/** Every behaviour of a feed against the real client, and the state in which each ended. */
const startedMs = performance.now();
const rows = [];
for (const [index, fault] of FAULT_CASES.entries()) {
  const { behaviour, expected, seen, tookMs } = await faultRow(fault);
  const verdict = seen === expected ? "as stated" : `NOT ${expected}`;
  rows.push({ "": index + 1, "feed behaviour": behaviour, "ends in": seen, verdict, ms: tookMs });
}
printTable(rows);
const strays = rows.filter(({ verdict }) => verdict !== "as stated").length;
printLines([`${rows.length} behaviours, ${strays} not as stated`]);
printLines([`${Math.round((performance.now() - startedMs) / 1000)} s`]);
process.exitCode = strays === 0 ? 0 : 1;
