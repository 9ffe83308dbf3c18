import { join } from "node:path";
import type { CellResult } from "../../core/replay/play-cell.ts";
import { POLICIES } from "../../core/replay/policy-list.ts";
import { keptCellsIn } from "../../service/replay/kept-cells.ts";
import { type ReplayAsk, readReplayAsk } from "../../service/replay/replay-ask.ts";
import { replayReport } from "../../service/replay/replay-report.ts";
import { reportMarkdown } from "../../service/replay/report-markdown.ts";
import { runReplay } from "../../service/replay/run-replay.ts";
import { printLines } from "./print.ts";

/*
 * The honest table: two real towns, four years, eight groups, thirty seeds. Seeds below 1000 are for tuning and for
 * looking into single cases; those from 1001 on were never looked at but in this table.
 *
 *   node --import ./service/runtime.mjs tests/drills/replay-table.ts ways|parts [minutes] [folder] [share]
 *
 * `ways` holds the planner against people and the bound, `parts` against itself with something left out. Some hours on
 * one core each. It goes on where it stopped; after so many minutes it prints what there is by then. Seasons are played
 * in an order in which each round adds one season of every seed at either town, so that a table cut short is even.
 * Two runs can share a folder: share 1/2 plays the odd seasons of the list, 2/2 the even ones.
 */
const FIRST_SEED = 1001;
const SEEDS = 30;
const YEARS = [2012, 2013, 2014, 2015];

const [name = "ways", minutes = "600", folderGiven, share = "1/1"] = process.argv.slice(2);
const folder = folderGiven ?? join(import.meta.dirname, "../../.replay-table");
const kinds = name === "parts" ? ["planner", "ablation"] : ["people", "planner"];
const read = readReplayAsk({
  years: YEARS.join(","),
  policy: POLICIES.filter(({ kind }) => kinds.includes(kind))
    .map(({ id }) => id)
    .join(","),
  seed: String(FIRST_SEED),
  seeds: String(SEEDS),
  bound: name !== "parts",
});
if (!read.ok) throw new Error(JSON.stringify(read.problems));
const ask: ReplayAsk = read.value;
const { groupIds, policyIds, bound } = ask;
const kept = await keptCellsIn(folder, { groupIds, policyIds, bound });

const seasons = YEARS.flatMap((_, round) =>
  Array.from({ length: SEEDS }, (_, s) => ({
    seed: FIRST_SEED + s,
    year: YEARS[(s + round) % YEARS.length]!,
  })).flatMap((one) => ask.placeIds.map((placeId) => ({ ...one, placeId }))),
);
const [part, parts] = share.split("/").map(Number) as [number, number];
const endMs = performance.now() + Number(minutes) * 60_000;
for (const [i, { seed, year, placeId }] of seasons.entries()) {
  if (i % parts !== part - 1) continue;
  if (performance.now() >= endMs) break;
  await runReplay({ ...ask, placeIds: [placeId], years: [year], firstSeed: seed, seedCount: 1 }, { kept });
  process.stderr.write(`${placeId} ${year} ${seed}: ${i + 1} of ${seasons.length}\n`);
}
const cells: CellResult[] = [];
for (const { seed, year, placeId } of seasons) {
  const cell = await kept.read(`${placeId}-${seed}-${year}`);
  if (cell !== null) cells.push(cell);
}
printLines([reportMarkdown(replayReport(ask, cells))]);
