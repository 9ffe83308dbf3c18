import { spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import process from "node:process";
import type { BenchReport } from "./run.ts";

const ROOT = join(import.meta.dirname, "../..");
const STARTS = 3;
const LIMIT_MS = 3000;

/** How long the demonstration takes from the command to its address, and to end at Ctrl-C. */
export async function bench(): Promise<BenchReport> {
  const lines: string[] = [];
  for (let start = 1; start <= STARTS; start++) {
    const { readyMs, endedMs } = await startAndStop();
    const within = readyMs <= LIMIT_MS ? "within" : "NOT within";
    lines.push(
      `start ${start}: ready after ${readyMs} ms (${within} ${LIMIT_MS}), ended ${endedMs} ms after Ctrl-C`,
    );
  }
  return { name: "demonstration from command to address", lines };
}

async function startAndStop(): Promise<{ readyMs: number; endedMs: number }> {
  const begun = performance.now();
  const args = ["--import", "./service/runtime.mjs", "service/cli.ts", "demo", "--port", "0"];
  const child = spawn(process.execPath, args, { cwd: ROOT, stdio: ["ignore", "pipe", "inherit"] });
  let said = "";
  for await (const part of child.stdout.setEncoding("utf8")) {
    said += part;
    if (said.includes("http://127.0.0.1:")) break;
  }
  const readyMs = Math.round(performance.now() - begun);
  const asked = performance.now();
  child.kill("SIGINT");
  const [code] = child.exitCode === null ? await once(child, "exit") : [child.exitCode];
  if (code !== 0) throw new Error(`the demonstration ended with ${code}`);
  return { readyMs, endedMs: Math.round(performance.now() - asked) };
}
