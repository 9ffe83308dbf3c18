import { keptCellsIn } from "../replay/kept-cells.ts";
import { readReplayAsk } from "../replay/replay-ask.ts";
import { replayReport } from "../replay/replay-report.ts";
import { reportMarkdown } from "../replay/report-markdown.ts";
import { runReplay } from "../replay/run-replay.ts";
import { print, say, sayProblems } from "./output.ts";
import { BAD_INPUT, DONE, type Verb } from "./verb.ts";

export const replay: Verb = {
  about: [
    "Plays whole years morning by morning: real days of Seattle and New York (or invented coasts), an invented garden of " +
      "eight pots, forecasts that err as published ones do, and pots whose true nature nobody is told. Prints what each " +
      "way of looking after the pots came to, and the best that could have been done, as Markdown. The same seed gives " +
      "the same bytes.",
    "Several values stand in one list with commas. With --keep a run that was broken off goes on where it stopped. A " +
      "place and year take about ten seconds for the planner.",
  ],
  positionals: [],
  options: {
    place: {
      type: "string",
      value: "list",
      about: "seattle, new-york (both when left out), invented-monsoon, invented-dry-summer",
    },
    years: { type: "string", value: "list", about: "of 2012 to 2015; 2014 when left out" },
    group: {
      type: "string",
      value: "list",
      about: "groups of plants; all eight of the garden when left out",
    },
    mix: {
      type: "string",
      value: "id",
      about: "stony or barky for all pots; each group's own when left out",
    },
    vessel: {
      type: "string",
      value: "measures",
      about: "rim x base x height in cm for all pots, e.g. 24x18x20:unglazed",
    },
    policy: {
      type: "string",
      value: "list",
      about: "ways to compare; those of people and the planner when left out",
    },
    seed: { type: "string", value: "n", about: "first seed; 1 when left out" },
    seeds: { type: "string", value: "n", about: "how many seeds; 1 when left out" },
    "without-bound": { type: "boolean", about: "leave out the best that could have been done" },
    keep: { type: "string", value: "folder", about: "where finished parts are kept to go on from" },
    json: { type: "boolean", about: "print the figures as JSON instead" },
  },
  async run({ options }) {
    const read = readReplayAsk({ ...options, bound: options["without-bound"] !== true });
    if (!read.ok) {
      sayProblems("leebench replay", read.problems);
      return BAD_INPUT;
    }
    const ask = read.value;
    const { groupIds, policyIds, mixId, vessel, bound } = ask;
    const about = { groupIds, policyIds, mixId, vessel, bound };
    const kept = typeof options.keep === "string" ? { kept: await keptCellsIn(options.keep, about) } : {};
    const startedMs = performance.now();
    const cells = await runReplay(ask, {
      ...kept,
      onProgress: ({ done, total }) =>
        say(progressLine({ done, total, spentMs: performance.now() - startedMs })),
    });
    const report = replayReport(ask, cells);
    await print(options.json === true ? `${JSON.stringify(report)}\n` : reportMarkdown(report));
    return DONE;
  },
};

const BAR_CHARS = 24;

/** A bar, how many places and years are done, and how long the rest will take at this pace. */
function progressLine(at: { done: number; total: number; spentMs: number }): string {
  const filled = Math.round((BAR_CHARS * at.done) / at.total);
  const leftS = Math.round((at.spentMs / at.done) * (at.total - at.done)) / 1000;
  const bar = `${"=".repeat(filled)}${".".repeat(BAR_CHARS - filled)}`;
  return `[${bar}] ${at.done} of ${at.total}${at.done < at.total ? `, about ${Math.ceil(leftS)} s left` : ""}`;
}
