import { spawn } from "node:child_process";
import { once } from "node:events";
import { join } from "node:path";
import process from "node:process";

const ROOT = join(import.meta.dirname, "../../..");

export interface Ended {
  readonly code: number | null;
  readonly stdout: string;
  readonly stderr: string;
}

/** The real command in a process of its own; what Node compiles of it is kept for the next one. */
export function startCommand(args: readonly string[], env: Readonly<Record<string, string>> = {}) {
  return startNode(["service/cli.ts", ...args], env);
}

function startNode(args: readonly string[], env: Readonly<Record<string, string>>) {
  return spawn(process.execPath, ["--import", "./service/runtime.mjs", ...args], {
    cwd: ROOT,
    env: { PATH: process.env.PATH, NODE_COMPILE_CACHE: process.env.NODE_COMPILE_CACHE, ...env },
    stdio: "pipe",
  });
}

/** Runs it to its end with the given standard input. */
export async function runCommand(
  args: readonly string[],
  { input = "", env = {} }: { input?: string; env?: Readonly<Record<string, string>> } = {},
): Promise<Ended> {
  return endOf(startCommand(args, env), input);
}

/** Runs a few lines of script as Node runs the program, from the program's own folder. */
export function runScript(script: string): Promise<Ended> {
  return endOf(startNode(["--input-type=module", "--eval", script], {}), "");
}

async function endOf(child: ReturnType<typeof startCommand>, input: string): Promise<Ended> {
  const [stdout, stderr] = [textOf(child.stdout), textOf(child.stderr)];
  // A command that ends before it has read everything closes its end first.
  child.stdin.on("error", () => undefined);
  child.stdin.end(input);
  const [code] = (await once(child, "exit")) as [number | null];
  return { code, stdout: await stdout, stderr: await stderr };
}

/** The problems among the lines of standard error. */
export function problemsIn(stderr: string): { code: string; path: (string | number)[]; data?: unknown }[] {
  return stderr
    .split("\n")
    .filter((line) => line.startsWith("{"))
    .map((line) => JSON.parse(line));
}

async function textOf(stream: AsyncIterable<Buffer>): Promise<string> {
  const parts: Buffer[] = [];
  for await (const part of stream) parts.push(part);
  return Buffer.concat(parts).toString("utf8");
}
