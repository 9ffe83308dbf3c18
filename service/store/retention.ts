import type { Kysely } from "kysely";
import type { Tables } from "./tables.ts";

export interface KeepingTimes {
  readonly nowUtcMs: number;
  /** Forecasts that a brief or an amendment was made from. */
  readonly weatherDays: number;
  /** Plans that were told, and their messages. */
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
/** Plans made in between, which nobody was told, and forecasts that none was told from. Chosen by us. */
const UNTOLD_DAYS = 3;

/**
 * Lets go of what is past its keeping time. The journal and the hours gone by are never touched: they are the pots'
 * past. The newest plan and the newest forecast of a site stay however old they are.
 */
export async function letGoOfOld(step: Kysely<Tables>, times: KeepingTimes): Promise<LetGo> {
  const before = (days: number) => times.nowUtcMs - days * DAY_MS;
  const messages = await letGoOfMessages(step, before(times.planDays));
  const plans = await letGoOfPlans(step, {
    toldBefore: before(times.planDays),
    untoldBefore: before(Math.min(UNTOLD_DAYS, times.planDays)),
  });
  const pulls = await letGoOfPulls(step, {
    toldBefore: before(times.weatherDays),
    untoldBefore: before(Math.min(UNTOLD_DAYS, times.weatherDays)),
  });
  await letGoOfHoursBefore(step);
  const runs = await step.deleteFrom("run").where("started_utc_ms", "<", before(RUN_DAYS)).executeTakeFirst();
  return { messages, plans, pulls, runs: Number(runs.numDeletedRows) };
}

interface Before {
  readonly toldBefore: number;
  readonly untoldBefore: number;
}

async function letGoOfMessages(step: Kysely<Tables>, beforeUtcMs: number): Promise<number> {
  const { numDeletedRows } = await step
    .deleteFrom("outbox")
    .where("state", "!=", "waiting")
    .where("created_utc_ms", "<", beforeUtcMs)
    .executeTakeFirst();
  return Number(numDeletedRows);
}

/** The newest of a site is what the page shows; one with a message waiting is still to be told. */
async function letGoOfPlans(step: Kysely<Tables>, { toldBefore, untoldBefore }: Before): Promise<number> {
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

async function letGoOfPulls(step: Kysely<Tables>, before: Before): Promise<number> {
  const newest = step
    .selectFrom("weather_pull")
    .select((row) => row.fn.max("id").as("id"))
    .groupBy("site_id");
  const told = step
    .selectFrom("plan")
    .select("weather_pull_id as id")
    .where("kind", "in", ["morning", "amendment"])
    .where("weather_pull_id", "is not", null)
    .$castTo<{ id: number }>();
  const old = step
    .selectFrom("weather_pull")
    .select("id")
    .where("id", "not in", newest)
    .where((row) =>
      row.or([
        row("fetched_utc_ms", "<", before.toldBefore),
        row.and([row("fetched_utc_ms", "<", before.untoldBefore), row("id", "not in", told)]),
      ]),
    );
  await step.updateTable("plan").set({ weather_pull_id: null }).where("weather_pull_id", "in", old).execute();
  const { numDeletedRows } = await step.deleteFrom("weather_pull").where("id", "in", old).executeTakeFirst();
  return Number(numDeletedRows);
}

/** Hours as they were known before a correction, once no kept forecast is from before it. */
async function letGoOfHoursBefore(step: Kysely<Tables>): Promise<void> {
  await step
    .deleteFrom("past_hour_before")
    .where("until_pull_id", "<=", (row) =>
      row
        .selectFrom("weather_pull")
        .select((one) => one.fn.min("id").as("id"))
        .whereRef("weather_pull.site_id", "=", "past_hour_before.site_id"),
    )
    .execute();
}
