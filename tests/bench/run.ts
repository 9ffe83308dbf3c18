import { readdirSync } from "node:fs";
import process from "node:process";

/** What a bench tells: its name and a few lines of what was measured. */
export interface BenchReport {
  readonly name: string;
  readonly lines: readonly string[];
}

const SUFFIX = ".bench.ts";

/** Runs every bench beside this file, or those whose names hold a word given; one that throws fails the whole. */
const words = process.argv.slice(2);
const files = readdirSync(import.meta.dirname)
  .filter((file) => file.endsWith(SUFFIX))
  .filter((file) => words.length === 0 || words.some((word) => file.includes(word)))
  .sort();

if (files.length === 0) fail("no bench", new Error(`none of ${words.join(", ")} names a bench`));
for (const file of files) await runBench(file);

async function runBench(file: string): Promise<void> {
  try {
    const { bench } = (await import(`./${file}`)) as { bench: () => Promise<BenchReport> };
    const { name, lines } = await bench();
    process.stdout.write(`${[name, ...lines.map((line) => `  ${line}`)].join("\n")}\n\n`);
  } catch (error) {
    fail(file, error);
  }
}

function fail(what: string, error: unknown): void {
  process.stderr.write(`${what} failed: ${error instanceof Error ? error.stack : String(error)}\n\n`);
  process.exitCode = 1;
}
