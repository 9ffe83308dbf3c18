import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";
import { createInterface } from "node:readline";

export interface HouseProcess {
  readonly child: ChildProcess;
  readonly url: string;
  /** When its clock began, real time. */
  readonly clockStartMs: number;
  /** Beats that are over, by when each began on its own clock; they go on coming. */
  readonly beatsUtcMs: number[];
  /** What it wrote to standard error, where only trouble goes. */
  readonly said: string[];
}

/** Starts the drill's house in a process of its own and waits until it listens. */
export async function startHouseProcess(env: Readonly<Record<string, string>>): Promise<HouseProcess> {
  const here = import.meta.dirname;
  const said: string[] = [];
  const child = spawn(
    process.execPath,
    ["--import", join(here, "../../service/runtime.mjs"), join(here, "kill-nine-house.ts")],
    { env, stdio: ["ignore", "pipe", "pipe"] },
  );
  child.stderr?.on("data", (chunk: Buffer) => said.push(chunk.toString().slice(0, 500)));
  const beatsUtcMs: number[] = [];
  return new Promise((resolve, reject) => {
    const lines = createInterface({ input: child.stdout! });
    lines.once("line", (first) => {
      const [url, startMs] = first.split(" ") as [string, string];
      lines.on("line", (line) => beatsUtcMs.push(Number(line)));
      resolve({ child, url, clockStartMs: Number(startMs), beatsUtcMs, said });
    });
    lines.once("close", () => reject(new Error(`the service did not start: ${said.join("")}`)));
  });
}
