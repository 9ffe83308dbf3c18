import { type ChildProcess, spawn } from "node:child_process";
import { join } from "node:path";
import { createInterface } from "node:readline";

export interface HouseProcess {
  readonly child: ChildProcess;
  readonly url: string;
  /** When its clock began, real time. */
  readonly clockStartMs: number;
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
  for await (const line of createInterface({ input: child.stdout! })) {
    const [url, startMs] = line.split(" ") as [string, string];
    return { child, url, clockStartMs: Number(startMs), said };
  }
  throw new Error(`the service did not start: ${said.join("")}`);
}
