import { instantOf } from "../../site/instant.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { Settled } from "../choice/settle-pots.ts";
import type { Deed, PotPlan } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import { carryDeeds } from "./carry-deeds.ts";
import { dryDeed } from "./dry-deed.ts";
import { idleDeed } from "./idle-deed.ts";
import { waterDeed } from "./water-deed.ts";

/** One pot's line of the plan: its first deed, what follows, and how it would fare if nothing were done. */
export function potRow(context: PlanContext, study: PotStudy, settled: Settled): PotPlan {
  const { chosen, water } = settled;
  const carries = chosen === null ? [] : carryDeeds(context, study, chosen);
  const deeds = [waterDeed(context, study, water), dryDeed(context, study, water), ...carries]
    .filter((deed) => deed !== null)
    .sort(byTime);
  const isSoon =
    deeds[0] !== undefined && begins(deeds[0]) < instantOf(context.startUtcMs + NOTICE_H * HOUR_MS);
  const [first, ...then] = isSoon ? deeds : [idleDeed(context, study, water), ...deeds];
  const { pot, spotId } = study.now;
  return { ...first!, potId: pot.id, count: pot.count ?? 1, spotId, then, outlook: study.outlook };
}

/** Deeds that begin later than this stand below, not as what is to be done. Chosen by us: today and tomorrow morning. */
const NOTICE_H = 36;

function begins(deed: Deed): string {
  return deed.from ?? "";
}

function byTime(a: Deed, b: Deed): number {
  const [dueA, dueB] = [dueOf(a), dueOf(b)];
  return dueA < dueB ? -1 : dueA > dueB ? 1 : 0;
}

/** What is due first stands first; keeping dry has no hour and comes before all. */
function dueOf(deed: Deed): string {
  return deed.action === "keep-dry" ? "" : (deed.by ?? deed.from ?? "");
}
