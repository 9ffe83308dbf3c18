import { spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import process from "node:process";
import type { BenchReport } from "./run.ts";

const ROOT = join(import.meta.dirname, "../..");
const LINES = 100_000;
const DAY =
  '"latDeg":41,"elevationM":310,"dayOfYear":171,"tempMinC":13,"tempMaxC":26,"windMPerS":2.2,"windHeightM":2,' +
  '"radiationMjPerM2":21,"rhMeanFrac":0.58';

/** A long stream of days through the command, start of the process included. */
export async function bench(): Promise<BenchReport> {
  const args = ["--import", "./service/runtime.mjs", "service/cli.ts", "calc", "et0-daily"];
  const begun = performance.now();
  const child = spawn(process.execPath, args, { cwd: ROOT, stdio: ["pipe", "pipe", "inherit"] });
  const input = Array.from({ length: LINES }, (_, id) => `{"id":${id},${DAY}}\n`).join("");
  child.stdin.end(input);
  let answers = 0;
  for await (const part of child.stdout.setEncoding("utf8")) answers += part.split("\n").length - 1;
  const [code] = child.exitCode === null ? await once(child, "exit") : [child.exitCode];
  if (code !== 0 || answers !== LINES) throw new Error(`${answers} answers to ${LINES} lines, exit ${code}`);
  const seconds = (performance.now() - begun) / 1000;
  return {
    name: "leebench calc et0-daily",
    lines: [`${LINES} lines in ${seconds.toFixed(2)} s: ${Math.round(LINES / seconds)} lines a second`],
  };
}
