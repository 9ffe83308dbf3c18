import { type Learned, learnedByAllKnowing, learnedByCloud, learningRows } from "./learning.ts";

/** How many truths the all-knowing learner draws for each case. */
const KNOWING_POTS = 1500;
const HEADS = ["error", "of before", "aim", "missed by", "at best", "covered", "width", "doubts"];

const percent = (share: number) => `${(100 * share).toFixed(0)} %`;
const line = (name: string, cells: readonly string[]) =>
  process.stdout.write(`${name.padEnd(26)}${cells.map((cell) => cell.padStart(10)).join("")}\n`);

function table(title: string, of: { cloud: readonly Learned[]; best: readonly Learned[] }): void {
  const rows = learningRows(of.cloud);
  const best = learningRows(of.best);
  const unlearned = learningRows(of.cloud.slice(0, of.best.length))[0]!.error;
  line(title, HEADS);
  for (const [i, { name, aim, error, against, covered, width, doubted }] of rows.entries()) {
    const missedBy = aim === null ? 0 : Math.round(100 * (against - aim));
    line(name, [
      ...[error, against].map(percent),
      aim === null ? "" : percent(aim),
      aim === null ? "" : missedBy > 0 ? `${missedBy} points` : "met",
      percent(best[i]!.error / unlearned),
      ...[covered, width, doubted].map(percent),
    ]);
  }
  process.stdout.write("\n");
}

/**
 * Prints what pots learn, on truths of which none was used while building, beside the least error that the same notes
 * allow, which is reckoned for the first truths only, for it takes long.
 */
export function printLearning({ from = 500_000, count = 200, knownCount = 100 }): void {
  for (const tested of [false, true]) {
    const cloud = learnedByCloud({ from, count, tested });
    const best = learnedByAllKnowing({ from, count: knownCount, tested }, KNOWING_POTS);
    const title = tested ? "mix tested by the grower" : "mix from the library";
    for (const mixId of [null, "peaty", "gritty"]) {
      const keep = (all: readonly Learned[]) => all.filter((one) => mixId === null || one.mixId === mixId);
      table(mixId === null ? title : `  ${mixId}`, { cloud: keep(cloud), best: keep(best) });
    }
  }
}
