import type { Deed } from "../../core/plan/deed.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { PotPlan } from "../../core/plan/pot-plan.ts";
import type { PotId } from "../../core/pot/pot.ts";
import { calendarDay } from "../../core/site/local-days.ts";
import type { CalendarDay } from "../../core/site/site.ts";
import { groupedBy } from "./grouped-by.ts";
import type { Naming } from "./naming.ts";

/** Water that a pot is likely to be given on a coming day. */
export interface ComingWater {
  readonly potId: PotId;
  readonly count: number;
  /** Where it stands by then. */
  readonly spotId: string;
  /** What the pot will have room for by then, each. */
  readonly waterMl: number;
}

/** A pot counts as due on the first day on which most of its cloud has come down to its refill point. */
const MOST = 0.5;
const POUR_STEP_ML = 50;

/** Waterings of coming days as far as the plan reckons: each pot when it is first due, and again as it dries as fast. */
export function comingWater(plan: Plan): Map<CalendarDay, ComingWater[]> {
  const byDay = new Map<CalendarDay, ComingWater[]>(plan.days.map(({ day }) => [day, []]));
  for (const pot of plan.pots) {
    for (const { index, leftFrac } of pours(pot)) {
      const day = plan.days[index]?.day;
      if (day === undefined) break;
      const { potId, count } = pot;
      byDay.get(day)!.push({ potId, count, spotId: spotOn(day, pot, plan), waterMl: roomMl(pot, leftFrac) });
    }
  }
  return byDay;
}

interface ComingPour {
  readonly index: number;
  readonly leftFrac: number;
}

/**
 * Days on which a pot is watered after today: reckoned for the first, then followed from day to day. From one on it
 * loses what it lost each day until then, and gains what rain brings to the pot that nobody waters.
 */
function pours({ action, then, outlook }: PotPlan): ComingPour[] {
  const deeds = [action, ...then.map((deed) => deed.action)];
  if (deeds.includes("keep-dry")) return [];
  const isWatered = deeds.includes("water") || deeds.includes("soak-slowly");
  const days = isWatered ? outlook.againDays?.mid : outlook.daysToRefill?.mid;
  const { byDayFrac, refillFrac, nowFrac } = outlook;
  const first = isWatered ? again(outlook) : dueIndex(outlook);
  if (days === undefined || first < 1) return [];
  const lossFrac = ((isWatered ? 1 : nowFrac.mid) - refillFrac) / Math.max(days, 0.5);
  const found = [{ index: first, leftFrac: isWatered ? refillFrac : (byDayFrac[first]?.mid ?? 1) }];
  let leftFrac = 1;
  for (let index = first + 1; index < byDayFrac.length && lossFrac > 0; index++) {
    const gainFrac = byDayFrac[index]!.mid - byDayFrac[index - 1]!.mid;
    leftFrac = Math.min(1, leftFrac + (gainFrac > 0 ? gainFrac : -lossFrac));
    if (leftFrac > refillFrac) continue;
    found.push({ index, leftFrac });
    leftFrac = 1;
  }
  return found;
}

/** Day on which a pot that is watered today is due again; -1 when that is not in sight. */
function again({ againDays }: PotPlan["outlook"]): number {
  return againDays ? Math.max(1, Math.floor(againDays.mid)) : -1;
}

/**
 * A pot that only falls due later is listed on that day. What falls due today, the plan has weighed: a pot that is nearly
 * full all the same dries within the day and is for tomorrow, any other is left to wait.
 */
function dueIndex({ reachesRefillShareFrac, nowFrac, refillFrac }: PotPlan["outlook"]): number {
  const index = reachesRefillShareFrac.findIndex((share) => share >= MOST);
  if (index !== 0) return index;
  return nowFrac.mid > (1 + refillFrac) / 2 ? 1 : -1;
}

function roomMl({ outlook }: PotPlan, leftFrac: number): number {
  const left = Math.min(1, leftFrac);
  return Math.max(POUR_STEP_ML, Math.round((outlook.capacityMl * (1 - left)) / POUR_STEP_ML) * POUR_STEP_ML);
}

/** Where the carries that are due by the end of a day have brought a pot. */
function spotOn(day: CalendarDay, pot: PotPlan, { zone }: Plan): string {
  const carries = [pot as Deed, ...pot.then].filter(
    ({ toSpotId, by }) =>
      toSpotId !== undefined && by !== undefined && calendarDay(Date.parse(by), zone) <= day,
  );
  return carries.at(-1)?.toSpotId ?? pot.spotId;
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
