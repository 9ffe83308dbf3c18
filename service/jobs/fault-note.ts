import type { Problem } from "../../core/problem.ts";
import { type NextStep, nextStepOf } from "../feed/feed-problem.ts";
import { StoreFault } from "../store/store-fault.ts";

/** One thing that went amiss in a job, as it is kept with the run. */
export interface Fault {
  readonly code: string;
  /** Which call of the feed it was. */
  readonly feed: string | null;
  /** What helps, where the feed names it. */
  readonly next: NextStep | null;
}

/** What a job itself can end with; further codes are the feed's and the store's. */
export const JOB_FAULTS = ["no-such-site", "no-weather-yet", "plan-failed", "night-failed"] as const;

/** The code of an error that broke a job: the store's own, or the job's. */
export function faultCodeOf(error: unknown, otherwise: (typeof JOB_FAULTS)[number]): string {
  return error instanceof StoreFault ? error.code : otherwise;
}

/** Problems as the run keeps them, each once: code, "@" and feed, "=" and the next step where it is not the usual one. */
export function faultNote(problems: readonly Problem[]): string {
  return [...new Set(problems.map(wordOf))].join(" ");
}

/** What `faultNote` wrote. */
export function faultsInNote(note: string): Fault[] {
  return note
    .split(" ")
    .filter((word) => word !== "")
    .map((word) => {
      const [, code = word, feed, next] = /^([^@=]+)(?:@([^=]+))?(?:=(.+))?$/.exec(word) ?? [];
      return { code, feed: feed ?? null, next: (next as NextStep | undefined) ?? nextStepOf(code) };
    });
}

function wordOf({ code, data = {} }: Problem): string {
  const { feed, next } = data;
  const usual = next === undefined || next === nextStepOf(code);
  return `${code}${feed === undefined ? "" : `@${feed}`}${usual ? "" : `=${next}`}`;
}
