import type { Plan } from "../../core/plan/plan.ts";
import { utcMsOfLocal } from "../../core/site/local-days.ts";
import type { BriefTiming } from "../brief/brief-value.ts";
import type { StoreQueries } from "../store/store-queries.ts";
import { briefTiming } from "./brief-timing.ts";

/** How the brief of a kept plan's day came: late or not, and after which days without one. */
export async function keptTiming(
  store: Pick<StoreQueries, "plans">,
  { plan, briefAtHour }: { plan: Plan; briefAtHour: number },
): Promise<BriefTiming> {
  const { siteId, forDay, zone } = plan;
  const morning = await store.plans.morningOf(siteId, forDay);
  return briefTiming({
    forDay,
    lateUtcMs: morning?.late ? morning.madeUtcMs : null,
    dueUtcMs: utcMsOfLocal(forDay, briefAtHour, zone),
    morningDays: await store.plans.morningDays(siteId),
  });
}
