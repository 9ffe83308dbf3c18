import type { Collection } from "../../core/plan/collection.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { Problem } from "../../core/problem.ts";
import { utcMsOfLocal } from "../../core/site/local-days.ts";
import type { BriefTiming } from "../brief/brief-value.ts";
import { planMessages } from "../notify/plan-messages.ts";
import { sheetMessages } from "../notify/sheet-messages.ts";
import { waysOn } from "../notify/ways-on.ts";
import { weeklyMessages } from "../notify/weekly-messages.ts";
import type { NewMessage } from "../store/outbox-store.ts";
import { briefTiming } from "./brief-timing.ts";
import { watchFrom } from "./day-watch.ts";
import type { Due } from "./due.ts";
import { faultCodeOf } from "./fault-note.ts";
import type { JobParts } from "./job-parts.ts";
import { makePlanNow } from "./make-plan-now.ts";
import { planTools } from "./plan-tools.ts";

/** Makes the day's plan and its messages, once; a try that fails is kept, so that the next waits a while. */
export async function morning(parts: JobParts, due: Due): Promise<void> {
  const siteId = due.siteId ?? "";
  const nowUtcMs = parts.now();
  try {
    const problems = await makeMorning(parts, { siteId, nowUtcMs, late: due.late });
    await note(parts, { due, nowUtcMs, fault: problems[0]?.code ?? null });
  } catch (error) {
    await note(parts, { due, nowUtcMs, fault: faultCodeOf(error, "plan-failed") });
    throw error;
  }
}

async function makeMorning(
  parts: JobParts,
  { siteId, nowUtcMs, late }: { siteId: string; nowUtcMs: number; late: boolean },
): Promise<readonly Problem[]> {
  const made = await makePlanNow({
    ...planTools(parts),
    siteId,
    nowUtcMs,
    late,
    settle: async ({ plan, input: { collection } }) => ({
      kind: "morning",
      messages: await morningMessages(parts, { plan, collection, nowUtcMs, late }),
      alongside: (step) => step.watchState.put(siteId, watchFrom(plan)),
    }),
  });
  return made.ok ? [] : made.problems;
}

/** The brief, and on the first day of a week the look at the week. */
async function morningMessages(
  parts: JobParts,
  made: { plan: Plan; collection: Collection; nowUtcMs: number; late: boolean },
): Promise<readonly NewMessage[]> {
  const { plan, nowUtcMs, late } = made;
  const common = { ...made, ways: await waysOn(plan.forDay, parts), houseId: parts.store.houseId };
  const timing = await timingNow(parts, { plan, lateUtcMs: late ? nowUtcMs : null });
  return [
    ...planMessages({ ...common, signing: parts.post.signing, amendment: null, timing }),
    ...weeklyMessages(common),
    ...sheetMessages(common),
  ];
}

async function timingNow(
  { store, briefAtHour }: JobParts,
  { plan, lateUtcMs }: { plan: Plan; lateUtcMs: number | null },
): Promise<BriefTiming> {
  const { siteId, forDay, zone } = plan;
  const dueUtcMs = utcMsOfLocal(forDay, briefAtHour, zone);
  return briefTiming({ forDay, lateUtcMs, dueUtcMs, morningDays: await store.plans.morningDays(siteId) });
}

async function note(
  { store, tally, log }: JobParts,
  { due, nowUtcMs, fault }: { due: Due; nowUtcMs: number; fault: string | null },
): Promise<void> {
  const outcome = fault === null ? "done" : "failed";
  tally.count(`morning.${outcome}`, nowUtcMs);
  const { slot, late, siteId } = due;
  log[fault === null ? "info" : "warn"]({ event: `morning-${outcome}`, siteId, forDay: slot, late, fault });
  await store.runs.add({
    ...(siteId === null ? {} : { siteId }),
    job: "morning",
    slot,
    startedUtcMs: nowUtcMs,
    endedUtcMs: nowUtcMs,
    outcome,
    late,
    detail: fault ?? "",
  });
}
