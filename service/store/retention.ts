import type { Kysely } from "kysely";
import type { Tables } from "./tables.ts";

export interface KeepingTimes {
  readonly nowUtcMs: number;
  /** Every forecast pulled is kept this long. */
  readonly weatherDays: number;
  /** Plans, their messages, and the forecasts that they were made from. */
  readonly planDays: number;
}

export interface LetGo {
  readonly plans: number;
  readonly messages: number;
  readonly pulls: number;
  readonly runs: number;
}

const DAY_MS = 86_400_000;
/** Notes of jobs: long enough to see how the last months went. Chosen by us. */
const RUN_DAYS = 90;
/** Plans made in between, which nobody was told. Chosen by us. */
const UNTOLD_PLAN_DAYS = 7;

/**
 * Lets go of what is past its keeping time. The journal and the hours gone by are never touched: they are the pots'
 * past. A forecast stays while a kept plan was made from it, and the newest of a site always.
 */
export async function letGoOfOld(step: Kysely<Tables>, times: KeepingTimes): Promise<LetGo> {
  const before = (days: number) => times.nowUtcMs - days * DAY_MS;
  const messages = await letGoOfMessages(step, before(times.planDays));
  const plans = await letGoOfPlans(step, {
    toldBefore: before(times.planDays),
    untoldBefore: before(Math.min(UNTOLD_PLAN_DAYS, times.planDays)),
  });
  const pulls = await letGoOfPulls(step, before(times.weatherDays));
  const runs = await step.deleteFrom("run").where("started_utc_ms", "<", before(RUN_DAYS)).executeTakeFirst();
  return { messages, plans, pulls, runs: Number(runs.numDeletedRows) };
}

async function letGoOfMessages(step: Kysely<Tables>, beforeUtcMs: number): Promise<number> {
  const { numDeletedRows } = await step
    .deleteFrom("outbox")
    .where("state", "!=", "waiting")
    .where("created_utc_ms", "<", beforeUtcMs)
    .executeTakeFirst();
  return Number(numDeletedRows);
}

/** The newest plan of a site stays however old it is: it is what the page shows. */
async function letGoOfPlans(
  step: Kysely<Tables>,
  { toldBefore, untoldBefore }: { toldBefore: number; untoldBefore: number },
): Promise<number> {
  const newest = step
    .selectFrom("plan")
    .select((row) => row.fn.max("id").as("id"))
    .groupBy("site_id");
  const { numDeletedRows } = await step
    .deleteFrom("plan")
    .where((row) =>
      row.or([
        row("made_utc_ms", "<", toldBefore),
        row.and([row("kind", "in", ["asked", "watch"]), row("made_utc_ms", "<", untoldBefore)]),
      ]),
    )
    .where("id", "not in", newest)
    .where(
      "id",
      "not in",
      step
        .selectFrom("outbox")
        .select("plan_id")
        .where("plan_id", "is not", null)
        .$castTo<{ plan_id: number }>(),
    )
    .executeTakeFirst();
  return Number(numDeletedRows);
}

async function letGoOfPulls(step: Kysely<Tables>, beforeUtcMs: number): Promise<number> {
  const newest = step
    .selectFrom("weather_pull")
    .select((row) => row.fn.max("id").as("id"))
    .groupBy("site_id");
  const { numDeletedRows } = await step
    .deleteFrom("weather_pull")
    .where("fetched_utc_ms", "<", beforeUtcMs)
    .where("id", "not in", newest)
    .where(
      "id",
      "not in",
      step
        .selectFrom("plan")
        .select("weather_pull_id")
        .where("weather_pull_id", "is not", null)
        .$castTo<{ weather_pull_id: number }>(),
    )
    .executeTakeFirst();
  return Number(numDeletedRows);
}
