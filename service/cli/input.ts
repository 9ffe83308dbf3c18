import process from "node:process";
import type { Outcome } from "../../core/problem.ts";
import { say } from "./output.ts";
import { parseJson } from "./parse-json.ts";

/** The whole of standard input. */
export async function readText(): Promise<string> {
  const parts: Buffer[] = [];
  for await (const part of standardInput()) parts.push(part);
  return new TextDecoder().decode(Buffer.concat(parts));
}

/** The whole of standard input as one JSON value. */
export async function readJson(): Promise<Outcome<unknown>> {
  return parseJson(await readText());
}

/**
 * Standard input line by line, as many at a time as have come, so that nobody waits for an answer to a line already
 * written. Only line feeds part lines: a JSON string may hold the other line separators of Unicode.
 */
export async function* readLines(): AsyncGenerator<string[]> {
  const decoder = new TextDecoder();
  let rest = "";
  for await (const part of standardInput()) {
    const lines = (rest + decoder.decode(part, { stream: true })).split("\n");
    rest = lines.pop() ?? "";
    yield lines;
  }
  yield [rest + decoder.decode()];
}

/** Somebody who forgot to pipe something in is told that the command waits. */
function standardInput(): AsyncIterable<Buffer> {
  if (process.stdin.isTTY) say("Reading from the keyboard; Ctrl-D ends the input.");
  return process.stdin;
}
