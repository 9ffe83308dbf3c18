// Closes the run with the counts, in one line that any reader of the log understands.
import { readFileSync } from "node:fs";
import process from "node:process";

const report = JSON.parse(readFileSync(process.argv[2], "utf8"));
const skipped = report.numPendingTests + report.numTodoTests;
process.stdout.write(
  `${report.numPassedTests} passed, ${report.numFailedTests} failed, ${skipped} skipped\n`,
);
