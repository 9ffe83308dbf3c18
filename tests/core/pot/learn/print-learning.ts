import { HABITS, learningTable } from "./learning.ts";

// Run by hand: node --import ./service/runtime.mjs tests/core/pot/learn/print-learning.ts [first seed] [count]
const [from = 500_000, count = 300] = process.argv.slice(2).map(Number);
const percent = (share: number) => `${(100 * share).toFixed(0)} %`.padStart(9);
for (const tested of [false, true]) {
  const title = tested ? "mix tested by the grower" : "mix from the library";
  const heads = ["error", "of before", "target", "covered", "width", "doubts"].map((head) =>
    head.padStart(10),
  );
  process.stdout.write(`${title.padEnd(26)}${heads.join("")}\n`);
  for (const [i, row] of learningTable({ from, count, tested }).entries()) {
    const cells = [row.error, row.against, HABITS[i]!.target, row.covered, row.width, row.doubted];
    process.stdout.write(
      `${row.name.padEnd(26)}${cells.map((share) => percent(share).padStart(10)).join("")}\n`,
    );
  }
}
