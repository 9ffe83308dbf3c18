import type { Problem } from "../../core/problem.ts";
import { planMessages } from "../notify/plan-messages.ts";
import type { Due } from "./due.ts";
import type { JobParts } from "./job-parts.ts";
import { makePlanNow } from "./make-plan-now.ts";

/** Makes the day's plan and its messages, once; a try that fails is kept, so that the next waits a while. */
export async function morning(parts: JobParts, due: Due): Promise<void> {
  const siteId = due.siteId ?? "";
  const nowUtcMs = parts.now();
  try {
    const problems = await makeMorning(parts, { siteId, nowUtcMs, late: due.late });
    await note(parts, { due, nowUtcMs, fault: problems[0]?.code ?? null });
  } catch (error) {
    await note(parts, { due, nowUtcMs, fault: error instanceof Error ? error.name : "unknown" });
    throw error;
  }
}

async function makeMorning(
  parts: JobParts,
  { siteId, nowUtcMs, late }: { siteId: string; nowUtcMs: number; late: boolean },
): Promise<readonly Problem[]> {
  const { store, feed, words, channels } = parts;
  const made = await makePlanNow({
    store,
    siteId,
    nowUtcMs,
    feed,
    kind: "morning",
    late,
    fetchWeather: parts.fetchWeather,
    ...(parts.plan ? { plan: parts.plan } : {}),
    messages: ({ plan, input }) =>
      planMessages({
        plan,
        collection: input.collection,
        words,
        channels,
        houseId: store.houseId,
        kind: "morning",
        nowUtcMs,
      }),
  });
  return made.ok ? [] : made.problems;
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
