import type { Pot } from "../../core/pot/pot.ts";
import type { Outcome } from "../../core/problem.ts";
import { caseRules } from "../case/case-rules.ts";
import { potsFromCsv } from "../store/pots-csv.ts";
import { importAll } from "../store/transfer.ts";
import { readJson, readText } from "./input.ts";
import { type Kept, siteAsked, withKeptStore } from "./kept-store.ts";
import { print, sayProblems } from "./output.ts";
import { BAD_INPUT, DONE, type ExitCode, type Verb } from "./verb.ts";

const HEADING = "leebench import";

export const importVerb: Verb = {
  about: [
    "Reads from standard input what leebench export printed, and takes it in whole or not at all. A site that is kept " +
      "already is not overwritten: that is told, and nothing is taken in.",
    "With --pots it reads pots as CSV, with the columns that leebench export --pots prints, into a site that is kept. " +
      "A pot of the same id takes the new values; its journal stays.",
  ],
  positionals: [],
  options: {
    pots: { type: "boolean", about: "read pots as CSV" },
    site: { type: "string", value: "id", about: "into which site, where several are kept" },
  },
  run: ({ options }) =>
    withKeptStore({ heading: HEADING, making: !options.pots }, async (kept) => {
      const came = await (options.pots ? takePots(kept, options.site as string | undefined) : takeAll(kept));
      if (!came.ok) sayProblems(HEADING, came.problems);
      return came.ok ? told(came.value) : BAD_INPUT;
    }),
};

async function takeAll({ store }: Kept): Promise<Outcome<string>> {
  const json = await readJson();
  const came = json.ok ? await importAll(store, json.value) : json;
  if (!came.ok) return came;
  const { sites, pots, entries, plans } = came.value;
  return { ok: true, value: `sites ${sites}, pots ${pots}, journal entries ${entries}, plans ${plans}` };
}

async function takePots({ store }: Kept, asked: string | undefined): Promise<Outcome<string>> {
  const site = await siteAsked(store, asked);
  const read = potsFromCsv(await readText());
  if (!site.ok || !read.ok)
    return { ok: false, problems: [site, read].flatMap((one) => (one.ok ? [] : one.problems)) };
  const collection = await store.collection(site.value.id);
  const problems = caseRules({ collection: { ...collection, pots: read.value } });
  // Told by row of the table: what is above it in the case is of no use here.
  if (problems.length > 0)
    return { ok: false, problems: problems.map((one) => ({ ...one, path: one.path.slice(2) })) };
  await keepPots(store, { siteId: site.value.id, pots: read.value });
  return { ok: true, value: `pots ${read.value.length}` };
}

function keepPots(
  store: Kept["store"],
  { siteId, pots }: { siteId: string; pots: readonly Pot[] },
): Promise<void> {
  return store.together(async (step) => {
    for (const pot of pots) await step.pots.put(siteId, pot);
  });
}

async function told(what: string): Promise<ExitCode> {
  await print(`Taken in: ${what}\n`);
  return DONE;
}
