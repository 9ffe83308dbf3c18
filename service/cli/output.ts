import { once } from "node:events";
import process from "node:process";
import type { Problem } from "../../core/problem.ts";

/** Writes to standard output and waits while the reader is behind. */
export async function print(text: string): Promise<void> {
  if (!process.stdout.write(text)) await once(process.stdout, "drain");
}

/** One line for the person at the terminal. */
export function say(line: string): void {
  process.stderr.write(`${line}\n`);
}

/** A heading, then one problem a line as JSON. */
export function sayProblems(heading: string, problems: readonly Problem[]): void {
  const count = problems.length === 1 ? "1 problem" : `${problems.length} problems`;
  say(`${heading}: ${count}`);
  for (const problem of problems) say(JSON.stringify(problem));
}
