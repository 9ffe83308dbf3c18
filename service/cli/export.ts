import { potsCsv } from "../store/pots-csv.ts";
import { exportAll } from "../store/transfer.ts";
import { type Kept, siteAsked, withKeptStore } from "./kept-store.ts";
import { print, sayProblems } from "./output.ts";
import { BAD_INPUT, DONE, type ExitCode, type Verb } from "./verb.ts";

const HEADING = "leebench export";

export const exportVerb: Verb = {
  about: [
    "Prints everything that is kept as one JSON object: places, spots, mixes, pots, journal, settings, past weather, " +
      "plans. leebench schema export describes it, leebench import reads it. It holds the exact place: keep it safe.",
  ],
  positionals: [],
  options: {
    pots: { type: "boolean", about: "print the pots alone, as CSV for a spreadsheet" },
    site: { type: "string", value: "id", about: "whose pots, where several sites are kept" },
  },
  run: ({ options }) =>
    withKeptStore({ heading: HEADING }, async (kept) => {
      if (options.pots) return printPots(kept, options.site as string | undefined);
      await print(`${JSON.stringify(await exportAll(kept.store, Date.now()))}\n`);
      return DONE;
    }),
};

async function printPots({ store }: Kept, asked: string | undefined): Promise<ExitCode> {
  const site = await siteAsked(store, asked);
  if (!site.ok) {
    sayProblems(HEADING, site.problems);
    return BAD_INPUT;
  }
  await print(potsCsv(await store.pots.list(site.value.id)));
  return DONE;
}
