import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { printLines } from "./print.ts";

/*
 * The drills of the service, one after the other, each in a process of its own:
 *
 *   npm run drill              a year of mornings, 300 kills, 200,000 odd requests, half an hour under load; some two hours
 *   npm run drill -- --short   three weeks of mornings, 5 kills, and little of the rest; some four minutes
 */
const isShort = process.argv.includes("--short");
const DRILLS: readonly { name: string; short: readonly string[] }[] = [
  { name: "fault-matrix", short: [] },
  { name: "clockwork", short: ["7", "21"] },
  { name: "kill-nine", short: ["5"] },
  { name: "full-disk", short: [] },
  { name: "fuzz", short: ["10000"] },
  { name: "soak", short: ["0.5"] },
];

const runtime = join(import.meta.dirname, "../../service/runtime.mjs");
const failed = DRILLS.filter(({ name, short }) => {
  printLines([`\n${name}`]);
  const file = join(import.meta.dirname, `${name}.ts`);
  const args = ["--expose-gc", "--import", runtime, file, ...(isShort ? short : [])];
  return spawnSync(process.execPath, args, { stdio: "inherit" }).status !== 0;
}).map(({ name }) => name);
printLines([`\n${failed.length === 0 ? "All drills went well." : `Look at: ${failed.join(", ")}.`}`]);
process.exitCode = failed.length === 0 ? 0 : 1;
