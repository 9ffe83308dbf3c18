import { nearestNames } from "../../core/mix/nearest-names.ts";
import type { Collection } from "../../core/plan/collection.ts";
import { type PlanInput, planFrom } from "../../core/plan/make-plan.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { weigh } from "../../core/plan/weigh.ts";
import { type Why, whyPot } from "../../core/plan/why-pot.ts";
import type { Outcome } from "../../core/problem.ts";
import { readCase } from "../case/case-schema.ts";
import { readSettings } from "../config.ts";
import { planInputNow, planInputThen } from "../jobs/plan-basis.ts";
import { wordsFor } from "../words/words.ts";
import { readJson } from "./input.ts";
import { type Kept, siteAsked, withKeptStore } from "./kept-store.ts";
import { print, sayProblems } from "./output.ts";
import { BAD_INPUT, DONE, type ExitCode, FAILED, type Verb } from "./verb.ts";
import { whyText } from "./why-text.ts";

const HEADING = "leebench why";

export const why: Verb = {
  about: [
    "Prints every number that one pot's deeds came from: the harm if nothing is done, by term and day; each way of " +
      "spending the days that was weighed, with its harm, its trouble and its cost; and what the water was weighed by. " +
      "Harm is in thousandths of a plant: 1000 is the plant as good as lost.",
    "The pot is given by its id or its whole name. The kept plan's own hour is taken, with what is kept now: what was " +
      "entered since counts. With --on it is the plan told on that day, from what was known then and nothing later.",
  ],
  positionals: [{ name: "pot", about: "id or name of a pot" }],
  options: {
    case: { type: "boolean", about: "read a case from standard input in place of the store" },
    json: { type: "boolean", about: "print the numbers as JSON, none left out" },
    all: {
      type: "boolean",
      about: "show the days of every way, not only of the chosen and the nearest others",
    },
    on: { type: "string", value: "day", about: "the plan told on that day, such as 2031-05-02" },
    site: { type: "string", value: "id", about: "which site, where several are kept" },
  },
  run({ options, words }) {
    const show = { pot: words[0]!, json: options.json === true, all: options.all === true };
    if (options.case) return fromCase(show);
    return withKeptStore({ heading: HEADING }, async (kept) => {
      const input = await inputKept(kept, {
        siteId: options.site as string | undefined,
        onDay: options.on as string | undefined,
      });
      if (input.ok) return tell(input.value, show);
      sayProblems(HEADING, input.problems);
      return input.problems.some(({ path }) => path[0] === "--site") ? BAD_INPUT : FAILED;
    });
  },
};

interface Show {
  readonly pot: string;
  readonly json: boolean;
  readonly all: boolean;
}

async function fromCase(show: Show): Promise<ExitCode> {
  const json = await readJson();
  const read = json.ok ? readCase(json.value) : json;
  if (read.ok) return tell(read.value, show);
  sayProblems(HEADING, read.problems);
  return BAD_INPUT;
}

/** What the newest plan was made from, as it is kept now; or that of a day, as it was known then. */
async function inputKept(
  { store }: Kept,
  asked: { siteId: string | undefined; onDay: string | undefined },
): Promise<Outcome<PlanInput>> {
  const site = await siteAsked(store, asked.siteId);
  if (!site.ok) return site;
  const siteId = site.value.id;
  if (asked.onDay !== undefined) return inputOn(store, { siteId, onDay: asked.onDay });
  const weather = await store.weather.latest(siteId);
  const made = await store.plans.latestStored(siteId);
  if (!weather || !made)
    return { ok: false, problems: [{ code: "no-plan-yet", path: ["plans"], data: { siteId } }] };
  return { ok: true, value: await planInputNow({ store, siteId, nowUtcMs: made.madeUtcMs }, weather) };
}

async function inputOn(
  store: Kept["store"],
  { siteId, onDay }: { siteId: string; onDay: string },
): Promise<Outcome<PlanInput>> {
  const told = await store.plans.toldOn(siteId, onDay);
  const value = told && (await planInputThen(store, told));
  if (value) return { ok: true, value };
  const code = told ? "plan-not-explainable" : "no-plan-that-day";
  return { ok: false, problems: [{ code, path: ["--on"], data: { siteId, onDay } }] };
}

async function tell(input: PlanInput, show: Show): Promise<ExitCode> {
  const { pots } = input.collection;
  const pot = pots.find(({ id }) => id === show.pot) ?? pots.find(({ name }) => name === show.pot);
  const weighed = weigh(input);
  const found = pot && whyPot(weighed, pot.id);
  if (!found) {
    const known = pots.flatMap(({ id, name }) => [id, name]);
    const code = pot ? "pot-not-in-plan" : "unknown-pot";
    const data = pot ? { given: show.pot } : { given: show.pot, nearest: nearestNames(show.pot, known) };
    sayProblems(HEADING, [{ code, path: ["<pot>"], data }]);
    return BAD_INPUT;
  }
  await print(
    show.json
      ? `${JSON.stringify(found)}\n`
      : textOf(found, { plan: planFrom(weighed, input), collection: input.collection, all: show.all }),
  );
  return DONE;
}

function textOf(why: Why, shown: { plan: Plan; collection: Collection; all: boolean }): string {
  const settings = readSettings(process.env);
  const { locale, units } = settings.ok ? settings.value : { locale: "en-GB", units: "metric" as const };
  return whyText({ why, ...shown, words: wordsFor(locale, units) });
}
