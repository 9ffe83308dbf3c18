import { existsSync } from "node:fs";
import { join } from "node:path";
import process from "node:process";
import { nearestNames } from "../../core/mix/nearest-names.ts";
import type { Outcome } from "../../core/problem.ts";
import type { Site } from "../../core/site/site.ts";
import { readSettings, type ServiceSettings } from "../config.ts";
import { openStore, type Store } from "../store/open-store.ts";
import { StoreFault } from "../store/store-fault.ts";
import { say, sayProblems } from "./output.ts";
import { BAD_INPUT, type ExitCode, FAILED } from "./verb.ts";

export interface Kept {
  readonly store: Store;
  readonly settings: ServiceSettings;
}

/** Opens the store that the environment names, beside a running service or without one, and closes it after. */
export async function withKeptStore(
  heading: string,
  work: (kept: Kept) => Promise<ExitCode>,
): Promise<ExitCode> {
  const read = readSettings(process.env);
  if (!read.ok) {
    sayProblems(heading, read.problems);
    return BAD_INPUT;
  }
  const { dataDir } = read.value;
  const file = join(dataDir, "leebench.db");
  if (!existsSync(file)) {
    sayProblems(heading, [{ code: "nothing-kept", path: ["LEEBENCH_DATA_DIR"], data: { dataDir } }]);
    say("Nothing is kept there yet. Start the service (npm start) and enter a place and a first pot.");
    return FAILED;
  }
  try {
    const store = await openStore(file);
    return await work({ store, settings: read.value }).finally(() => store.close());
  } catch (error) {
    return storeFailed(heading, error);
  }
}

/** The site asked for, or the only one. */
export async function siteAsked(store: Store, asked: string | undefined): Promise<Outcome<Site>> {
  const sites = await store.sites.list();
  const known = sites.map(({ id }) => id);
  const site = asked === undefined ? only(sites) : sites.find(({ id }) => id === asked);
  if (site) return { ok: true, value: site };
  const problem =
    asked === undefined
      ? { code: sites.length === 0 ? "no-site-yet" : "site-not-said", path: ["--site"], data: { known } }
      : {
          code: "no-such-site",
          path: ["--site"],
          data: { given: asked, nearest: nearestNames(asked, known) },
        };
  return { ok: false, problems: [problem] };
}

function only(sites: readonly Site[]): Site | undefined {
  return sites.length === 1 ? sites[0] : undefined;
}

function storeFailed(heading: string, error: unknown): ExitCode {
  if (!(error instanceof StoreFault)) throw error;
  sayProblems(heading, [{ code: error.code, path: ["LEEBENCH_DATA_DIR"], data: error.data }]);
  say(error.message);
  return FAILED;
}
