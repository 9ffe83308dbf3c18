import type { Outcome } from "../../core/problem.ts";
import type { JobParts } from "./job-parts.ts";
import { makePlanNow, type PlanMade } from "./make-plan-now.ts";
import { planTools } from "./plan-tools.ts";

/** A plan because somebody asked or wrote an entry. Never throws: what went wrong is a problem and a line in the log. */
export async function replanNow(parts: JobParts, siteId: string): Promise<Outcome<PlanMade>> {
  const { now, log, tally } = parts;
  try {
    const made = await makePlanNow({ ...planTools(parts), siteId, nowUtcMs: now() });
    tally.count(made.ok ? "asked.done" : "asked.failed");
    return made;
  } catch (error) {
    tally.count("asked.broke");
    log.error({ event: "replan-broke", siteId, error });
    return { ok: false, problems: [{ code: "plan-failed", path: [], data: { siteId } }] };
  }
}
