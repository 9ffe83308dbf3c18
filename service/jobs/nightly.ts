import { backUp } from "../store/backup.ts";
import type { Due } from "./due.ts";
import { faultCodeOf } from "./fault-note.ts";
import type { JobParts } from "./job-parts.ts";

/**
 * The night's work: a checked backup, then letting go of what is past its keeping time. Nothing is let go of in a night
 * without a backup. The night is noted whether or not it went well, so that a full disk is not hammered every minute.
 */
export async function nightly(parts: JobParts, due: Due): Promise<void> {
  const nowUtcMs = parts.now();
  let fault = "";
  try {
    await nightsWork(parts, nowUtcMs);
  } catch (error) {
    fault = faultCodeOf(error, "night-failed");
    throw error;
  } finally {
    await note(parts, { due, nowUtcMs, fault });
  }
}

async function nightsWork(parts: JobParts, nowUtcMs: number): Promise<void> {
  const { store, log, keep, backupDir } = parts;
  if (backupDir !== null) {
    const { file, bytes, counts, removed } = await backUp(store, {
      dir: backupDir,
      nowUtcMs,
      keepCount: keep.backupCount,
    });
    log.info({ event: "backup-done", file, bytes, entries: counts.journal, removed });
  }
  const gone = await store.letGoOfOld({ nowUtcMs, weatherDays: keep.weatherDays, planDays: keep.planDays });
  log.info({ event: "let-go", ...gone });
}

async function note(
  { store, tally }: JobParts,
  { due, nowUtcMs, fault }: { due: Due; nowUtcMs: number; fault: string },
): Promise<void> {
  const outcome = fault === "" ? "done" : "failed";
  tally.count(`nightly.${outcome}`, nowUtcMs);
  await store.runs.add({
    job: "nightly",
    slot: due.slot,
    startedUtcMs: nowUtcMs,
    endedUtcMs: nowUtcMs,
    outcome,
    late: due.late,
    detail: fault,
  });
}
