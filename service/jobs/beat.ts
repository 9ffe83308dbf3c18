import { deliverDue } from "../notify/deliver-due.ts";
import { type Due, dueNow, NIGHTLY_RETRY_MS } from "./due.ts";
import type { JobParts } from "./job-parts.ts";
import { morning } from "./morning.ts";
import { nightly } from "./nightly.ts";
import { pullAndWatch } from "./pull-and-watch.ts";
import { readRuns } from "./read-runs.ts";

const JOBS: Record<Due["job"], (parts: JobParts, due: Due) => Promise<void>> = {
  morning,
  pull: pullAndWatch,
  nightly,
};

/** One heartbeat: does whatever is due, one after the other. A job that fails is told and leaves the others alone. */
export async function beat(parts: JobParts): Promise<void> {
  const nowUtcMs = parts.now();
  const done = new Set<string>();
  for (let due = await nextDue(parts, done); due; due = await nextDue(parts, done)) {
    const { job, siteId } = due;
    done.add(keyOf(due));
    const work = JOBS[job].bind(null, parts, due);
    await guarded(parts, { name: job, siteId }, work);
  }
  await guarded(parts, { name: "deliver", siteId: null }, async () =>
    deliverDue({ ...parts, ways: await parts.post.ways() }),
  );
  parts.tally.count("beat", nowUtcMs);
}

/** Looked up anew after each job: a morning that has pulled the weather itself leaves nothing to pull. */
async function nextDue(parts: JobParts, done: ReadonlySet<string>): Promise<Due | undefined> {
  const { sites, service } = await readRuns(parts.store);
  const { briefAtHour } = parts;
  const all = dueNow({ nowUtcMs: parts.now(), sites, service, briefAtHour });
  return all.find((due) => !done.has(keyOf(due)) && !hasJustBroken(parts, due));
}

function keyOf({ job, siteId }: Due): string {
  return `${job} ${siteId ?? ""}`;
}

/** A night on a full disk cannot even note in the store that it failed; it rests all the same. */
function hasJustBroken({ tally, now }: JobParts, { job }: Due): boolean {
  const brokeUtcMs = tally.lastUtcMs.get("nightly.broke");
  return job === "nightly" && brokeUtcMs !== undefined && Math.abs(now() - brokeUtcMs) < NIGHTLY_RETRY_MS;
}

async function guarded(
  { log, tally, now }: JobParts,
  { name, siteId }: { name: string; siteId: string | null },
  work: () => Promise<unknown>,
): Promise<void> {
  try {
    await work();
  } catch (error) {
    tally.count(`${name}.broke`, now());
    log.error({ event: "job-broke", job: name, siteId, error });
  }
}
