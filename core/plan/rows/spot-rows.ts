import { plantMassKg } from "../../plant/plant-mass.ts";
import { type LocalDay, localDays } from "../../site/local-days.ts";
import type { Spread } from "../../weather/spread.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { SpotDays } from "../days/spot-days.ts";
import type { SpotPlan } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import { spreadOf } from "./spread-of.ts";

/** How each spot stands, and what it gets by local day from now on, in walking order. */
export function spotRows(context: PlanContext, studies: readonly PotStudy[]): SpotPlan[] {
  const order = (a: SpotDays, b: SpotDays) =>
    a.spot.walkOrder - b.spot.walkOrder || (a.spot.id < b.spot.id ? -1 : 1);
  return [...context.spots.values()].sort(order).map((at) => {
    const here = studies.filter((study) => study.here.at === at);
    const potCount = here.reduce((sum, { now }) => sum + (now.pot.count ?? 1), 0);
    const places = at.spot.room?.places;
    return {
      spotId: at.spot.id,
      potCount,
      placesLeft: places === undefined ? null : Math.max(0, places - potCount),
      loadKg: loadKg(here),
      ...byLocalDay(context, at),
    };
  });
}

/** What stands there weighs, as it is and with every pore of its mixes filled. */
function loadKg(here: readonly PotStudy[]): { now: number; soaked: number } {
  let sumNow = 0;
  let soaked = 0;
  for (const { now, stander } of here) {
    const count = now.pot.count ?? 1;
    sumNow += count * stander.massKg;
    soaked += count * (now.inVessel.hold.soakedMassKg + plantMassKg(now.pot, now.values));
  }
  return { now: Math.round(sumNow), soaked: Math.round(soaked) };
}

function byLocalDay(context: PlanContext, at: SpotDays) {
  const { rainMm, plantTempC } = at.forcing;
  const rain = context.localDays.map((day) => byMember(at, day, { column: rainMm, fold: sum, first: 0 }));
  const coldest = nightsOf(context).map((night) =>
    byMember(at, night, { column: plantTempC, fold: Math.min, first: Number.POSITIVE_INFINITY }),
  );
  return { rainByDayMm: rain, coldestByDayC: coldest };
}

const HALF_DAY_HOURS = 12;
/** From noon until six in the morning: without these hours a night's coldest is not known. */
const LEAST_NIGHT_HOURS = 18;

/** From noon to noon, each under the day on which it begins; what is left of the last night belongs to yesterday. */
function nightsOf({ startUtcMs, hourCount, site, localDays: [today] }: PlanContext): LocalDay[] {
  const halfDayAgo = { startUtcMs: startUtcMs - HALF_DAY_HOURS * HOUR_MS, hourCount };
  return localDays(halfDayAgo, site.zone).filter(
    ({ day, fromHour, toHour }) =>
      day >= today!.day && (toHour < hourCount || toHour - fromHour >= LEAST_NIGHT_HOURS),
  );
}

function byMember(
  { size }: SpotDays,
  { fromHour, toHour }: LocalDay,
  of: { column: Float64Array; fold: (total: number, value: number) => number; first: number },
): Spread {
  const totals = new Float64Array(size).fill(of.first);
  for (let i = fromHour * size; i < toHour * size; i++) {
    totals[i % size] = of.fold(totals[i % size]!, of.column[i]!);
  }
  return spreadOf({ values: totals, weightFrac: new Float64Array(size).fill(1 / size) }, 0.1);
}

function sum(total: number, value: number): number {
  return total + value;
}
