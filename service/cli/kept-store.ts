import { existsSync, mkdirSync } from "node:fs";
import { join } from "node:path";
import process from "node:process";
import { nearestNames } from "../../core/mix/nearest-names.ts";
import type { Outcome } from "../../core/problem.ts";
import type { Site } from "../../core/site/site.ts";
import { readSettings, type ServiceSettings } from "../config.ts";
import { openStore, type Store } from "../store/open-store.ts";
import { StoreFault } from "../store/store-fault.ts";
import { STORE_NAME } from "../store/store-names.ts";
import { say, sayProblems } from "./output.ts";
import { BAD_INPUT, type ExitCode, FAILED } from "./verb.ts";

export interface Kept {
  readonly store: Store;
  readonly settings: ServiceSettings;
}

/** Reads the settings from the environment; every fault at once. A store that cannot do its part ends with 2. */
export async function withSettings(
  heading: string,
  work: (settings: ServiceSettings) => Promise<ExitCode>,
): Promise<ExitCode> {
  const read = readSettings(process.env);
  if (!read.ok) {
    sayProblems(heading, read.problems);
    return BAD_INPUT;
  }
  try {
    return await work(read.value);
  } catch (error) {
    return storeFailed(heading, error);
  }
}

/**
 * Opens the store that the environment names, beside a running service or without one, and closes it after.
 * @param making  makes a store where there is none; else that is told, and nothing is made
 */
export function withKeptStore(
  { heading, making = false }: { heading: string; making?: boolean },
  work: (kept: Kept) => Promise<ExitCode>,
): Promise<ExitCode> {
  return withSettings(heading, async (settings) => {
    const { dataDir } = settings;
    const file = join(dataDir, STORE_NAME);
    if (!making && !existsSync(file)) return nothingKept(heading, dataDir);
    mkdirSync(dataDir, { recursive: true, mode: 0o700 });
    const store = await openStore(file);
    return await work({ store, settings }).finally(() => store.close());
  });
}

function nothingKept(heading: string, dataDir: string): ExitCode {
  sayProblems(heading, [{ code: "nothing-kept", path: ["LEEBENCH_DATA_DIR"], data: { dataDir } }]);
  say("Nothing is kept there yet. Start the service (npm start) and enter a place and a first pot.");
  return FAILED;
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
