import type { Kysely, Selectable } from "kysely";
import type { JobName, Tables } from "./tables.ts";

/** One run of a job, kept so that what is due can be reckoned after any restart. */
export interface Run {
  /** Absent for jobs of the whole service. */
  readonly siteId?: string;
  readonly job: JobName;
  readonly slot: string;
  readonly startedUtcMs: number;
  readonly endedUtcMs: number;
  readonly outcome: "done" | "failed";
  readonly late: boolean;
  /** Code of what went wrong, or a few words on what was done. */
  readonly detail: string;
}

export interface RunsStore {
  add(run: Run): Promise<void>;
  /** Newest first, in the order of writing: clocks may have been set back. */
  latest(job: JobName, siteId?: string, limit?: number): Promise<Run[]>;
}

export function runsStore(db: Kysely<Tables>): RunsStore {
  return {
    async add(run) {
      await db
        .insertInto("run")
        .values({
          site_id: run.siteId ?? null,
          job: run.job,
          slot: run.slot,
          started_utc_ms: run.startedUtcMs,
          ended_utc_ms: run.endedUtcMs,
          outcome: run.outcome,
          late: run.late ? 1 : 0,
          detail: run.detail,
        })
        .execute();
    },
    async latest(job, siteId, limit = 12) {
      const rows = await db
        .selectFrom("run")
        .selectAll()
        .where("job", "=", job)
        .where("site_id", siteId === undefined ? "is" : "=", siteId ?? null)
        .orderBy("id", "desc")
        .limit(limit)
        .execute();
      return rows.map(runOfRow);
    },
  };
}

function runOfRow(row: Selectable<Tables["run"]>): Run {
  return {
    ...(row.site_id === null ? {} : { siteId: row.site_id }),
    job: row.job,
    slot: row.slot,
    startedUtcMs: row.started_utc_ms,
    endedUtcMs: row.ended_utc_ms,
    outcome: row.outcome,
    late: row.late === 1,
    detail: row.detail,
  };
}
