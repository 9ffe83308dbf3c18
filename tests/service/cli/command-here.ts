import process from "node:process";
import { Readable } from "node:stream";
import { vi } from "vitest";
import { command } from "../../../service/cli/command.ts";
import type { Ended } from "./run-command.ts";

let turn: Promise<unknown> = Promise.resolve();

/** The command in this process, one at a time: where the process is what is tested, `runCommand` starts a real one. */
export function commandHere(
  args: readonly string[],
  { input = "", env = {} }: { input?: string; env?: Readonly<Record<string, string>> } = {},
): Promise<Ended> {
  const mine = turn.then(() => inItsPlace({ args, input, env }));
  turn = mine.catch(() => undefined);
  return mine;
}

/** Streams and environment are its own while it runs, as those of a new process would be. */
async function inItsPlace(given: {
  args: readonly string[];
  input: string;
  env: Readonly<Record<string, string>>;
}): Promise<Ended> {
  const [stdout, stderr] = [kept(process.stdout), kept(process.stderr)];
  const before = { env: process.env, stdin: Object.getOwnPropertyDescriptor(process, "stdin") };
  process.env = { ...given.env };
  const input = Readable.from(given.input === "" ? [] : [Buffer.from(given.input)]);
  Object.defineProperty(process, "stdin", { value: input, configurable: true });
  try {
    const code = await command(given.args);
    return { code, stdout: stdout.text(), stderr: stderr.text() };
  } finally {
    process.env = before.env;
    if (before.stdin) Object.defineProperty(process, "stdin", before.stdin);
    stdout.back();
    stderr.back();
  }
}

function kept(stream: NodeJS.WriteStream) {
  const parts: string[] = [];
  const spy = vi.spyOn(stream, "write").mockImplementation((part) => {
    parts.push(String(part));
    return true;
  });
  return { text: () => parts.join(""), back: () => spy.mockRestore() };
}
