import { join } from "node:path";
import { POLICIES } from "../../core/replay/policy-list.ts";
import { keptCellsIn } from "../../service/replay/kept-cells.ts";
import { type ReplayAsk, readReplayAsk } from "../../service/replay/replay-ask.ts";
import { replayReport } from "../../service/replay/replay-report.ts";
import { reportMarkdown } from "../../service/replay/report-markdown.ts";
import { runReplay } from "../../service/replay/run-replay.ts";
import { printLines } from "./print.ts";

/*
 * The honest table: two real towns, four years, eight groups, every way of looking after pots, thirty seeds. Seeds below
 * 1000 are for tuning and for looking into single cases; these were never looked at but in this table.
 *
 *   node --import ./service/runtime.mjs tests/drills/replay-table.ts [seeds] [first seed] [folder]
 *
 * Some hours on one core. It goes on where it stopped, and two runs with seeds of their own can share the folder.
 */
const FIRST_TABLE_SEED = 1001;
const TABLE_SEEDS = 30;

const [seeds = TABLE_SEEDS, first = FIRST_TABLE_SEED] = process.argv.slice(2, 4).map(Number);
const folder = process.argv[4] ?? join(import.meta.dirname, "../../.replay-table");

const read = readReplayAsk({
  years: "2012,2013,2014,2015",
  policy: POLICIES.map(({ id }) => id).join(","),
  seed: String(first),
  seeds: String(seeds),
  bound: true,
});
if (!read.ok) throw new Error(JSON.stringify(read.problems));
const ask: ReplayAsk = read.value;
const { groupIds, policyIds, bound } = ask;
const kept = await keptCellsIn(folder, { groupIds, policyIds, bound });
const startedMs = performance.now();
const cells = await runReplay(ask, {
  kept,
  onProgress: ({ done, total, kept: found }) =>
    process.stderr.write(
      `${done} of ${total}${found ? ", kept" : ""}, ${Math.round((performance.now() - startedMs) / 1000)} s\n`,
    ),
});
printLines([reportMarkdown(replayReport(ask, cells))]);
