import type { Outcome, Problem } from "../../core/problem.ts";
import { readCase } from "../case/case-schema.ts";
import { houseAtHome, houseElsewhere } from "../replay/house-grounds.ts";
import { type KeptCells, keptCellsIn } from "../replay/kept-cells.ts";
import { ownStage } from "../replay/own-stage.ts";
import { OWN_SITE } from "../replay/own-year.ts";
import { type ReplayAsk, readReplayAsk } from "../replay/replay-ask.ts";
import { replayReport } from "../replay/replay-report.ts";
import { reportMarkdown } from "../replay/report-markdown.ts";
import { type Ground, gardenGrounds, runReplay } from "../replay/run-replay.ts";
import { readJson } from "./input.ts";
import { siteAsked, withKeptStore } from "./kept-store.ts";
import { print, say, sayProblems } from "./output.ts";
import { type Arguments, BAD_INPUT, DONE, type ExitCode, type Verb } from "./verb.ts";

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
    own: {
      type: "boolean",
      about: "replay the pots of a case on standard input, moved to the place, not the garden's",
    },
    house: {
      type: "boolean",
      about: "replay the pots that this house keeps, moved to the place",
    },
    "own-year": {
      type: "string",
      value: "year",
      about:
        "with --house: that year at its own site, from the feed's archive and what its forecasts had said, else from the " +
        "hours the house has kept",
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
    if (!read.ok) return refused(read.problems);
    const asked = read.value;
    const year = options["own-year"] === undefined ? null : wholeYear(options["own-year"]);
    if (year !== null && !year.ok) return refused(year.problems);
    if (options.house === true || year !== null) {
      return withKeptStore({ heading: HEADING }, async ({ store, settings }) => {
        const site = await siteAsked(store, undefined);
        if (!site.ok) return refused(site.problems);
        const house = { store, site: site.value, feed: settings.feed, nowUtcMs: Date.now() };
        const grounds =
          year === null ? await houseElsewhere(house, asked.placeIds) : await houseAtHome(house, year.value);
        const ask = year === null ? asked : { ...asked, placeIds: [OWN_SITE], years: [year.value] };
        return grounds.ok ? played(ask, grounds.value, options) : refused(grounds.problems);
      });
    }
    const own = options.own === true ? await ownGrounds(asked) : null;
    if (own !== null && !own.ok) return refused(own.problems);
    return played(asked, own?.value ?? gardenGrounds(asked), options);
  },
};

const HEADING = "leebench replay";

async function played(
  asked: ReplayAsk,
  grounds: readonly Ground[],
  options: Arguments["options"],
): Promise<ExitCode> {
  const groupIds = [...new Set(grounds.flatMap(({ stage }) => stage.pots.map(({ pot }) => pot.groupId)))];
  const ask = { ...asked, groupIds };
  const startedMs = performance.now();
  const cells = await runReplay(ask, {
    grounds,
    ...(typeof options.keep === "string" ? { kept: await keptIn(options.keep, ask, grounds) } : {}),
    onProgress: ({ done, total }) =>
      say(progressLine({ done, total, spentMs: performance.now() - startedMs })),
  });
  const report = replayReport(ask, cells, grounds);
  await print(options.json === true ? `${JSON.stringify(report)}\n` : reportMarkdown(report));
  return DONE;
}

function wholeYear(text: unknown): Outcome<number> {
  const year = Number(text);
  if (Number.isInteger(year) && year >= FIRST_YEAR && year <= LAST_YEAR) return { ok: true, value: year };
  const data = { given: text, least: FIRST_YEAR, most: LAST_YEAR };
  return { ok: false, problems: [{ code: "not-a-whole-number", path: ["--own-year"], data }] };
}

/** The feed's archive reaches back so far. */
const FIRST_YEAR = 1940;
const LAST_YEAR = 2200;

function refused(problems: readonly Problem[]): ExitCode {
  sayProblems(HEADING, problems);
  return BAD_INPUT;
}

/** The pots of a case on standard input, moved to each place asked for. */
async function ownGrounds(ask: ReplayAsk): Promise<Outcome<Ground[]>> {
  const json = await readJson();
  const read = json.ok ? readCase(json.value) : json;
  if (!read.ok) return read;
  const stage = ownStage(read.value);
  if (!stage.ok) return stage;
  const { value } = stage;
  return {
    ok: true,
    value: gardenGrounds(ask).map(({ placeId, daily }) => ({
      placeId,
      daily,
      stage: { ...value, site: daily.site },
    })),
  };
}

/** Parts kept are taken up again only for the same pots, ways and bound. */
function keptIn(dir: string, ask: ReplayAsk, grounds: readonly Ground[]): Promise<KeptCells> {
  const { policyIds, bound } = ask;
  const about = {
    policyIds,
    bound,
    stages: grounds.map(({ stage, told, daily }) => ({ stage, told: told && daily })),
  };
  return keptCellsIn(dir, about);
}

const BAR_CHARS = 24;

/** A bar, how many places and years are done, and how long the rest will take at this pace. */
function progressLine(at: { done: number; total: number; spentMs: number }): string {
  const filled = Math.round((BAR_CHARS * at.done) / at.total);
  const leftS = Math.round((at.spentMs / at.done) * (at.total - at.done)) / 1000;
  const bar = `${"=".repeat(filled)}${".".repeat(BAR_CHARS - filled)}`;
  return `[${bar}] ${Math.floor(at.done)} of ${at.total}${at.done < at.total ? `, about ${Math.ceil(leftS)} s left` : ""}`;
}
