import type { Plan, PotPlan } from "../../core/plan/plan.ts";
import type { PotId } from "../../core/pot/pot.ts";
import type { CalendarDay } from "../../core/site/site.ts";
import { groupedBy } from "./grouped-by.ts";
import type { Naming } from "./naming.ts";

/** Water that a pot is likely to be given on a coming day. */
export interface ComingWater {
  readonly potId: PotId;
  readonly count: number;
  readonly spotId: string;
  /** What the pot will have room for by then, each. */
  readonly waterMl: number;
}

/** A pot counts as due on the first day on which most of its cloud has come down to its refill point. */
const MOST = 0.5;
const POUR_STEP_ML = 50;

/** Waterings of coming days as far as the plan reckons, each pot on the first day on which it is due. */
export function comingWater(plan: Plan): Map<CalendarDay, ComingWater[]> {
  const byDay = new Map<CalendarDay, ComingWater[]>(plan.days.map(({ day }) => [day, []]));
  for (const pot of plan.pots) {
    const index = dueIndex(pot);
    const day = plan.days[index]?.day;
    if (day === undefined) continue;
    byDay
      .get(day)
      ?.push({ potId: pot.potId, count: pot.count, spotId: pot.spotId, waterMl: roomMl(pot, index) });
  }
  return byDay;
}

/** What the plan waters or leaves dry today, it has weighed; a pot that only falls due later is listed on that day. */
function dueIndex({ action, outlook }: PotPlan): number {
  if (action === "keep-dry" || action === "water") return -1;
  const index = outlook.reachesRefillShareFrac.findIndex((share) => share >= MOST);
  return index === 0 ? -1 : index;
}

function roomMl({ outlook }: PotPlan, index: number): number {
  const left = Math.min(1, outlook.byDayFrac[index]?.mid ?? 1);
  return Math.max(POUR_STEP_ML, Math.round((outlook.capacityMl * (1 - left)) / POUR_STEP_ML) * POUR_STEP_ML);
}

/** Coming waterings as one line a spot, for whoever plans a week or looks after the pots of another. */
export function waterLines(waters: readonly ComingWater[], { words, potName, spotName }: Naming): string[] {
  return [...groupedBy(waters, ({ spotId }) => spotId)].map(([spotId, here]) =>
    words.say("holiday.water", {
      place: spotName(spotId),
      pots: words.list(
        here.map(({ potId, count, waterMl }) =>
          words.say(count > 1 ? "holiday.pot-each" : "holiday.pot", { pot: potName(potId), waterMl }),
        ),
      ),
    }),
  );
}
