import { plantMassKg } from "../../plant/plant-mass.ts";
import type { Spread } from "../../weather/spread.ts";
import { roomsLeft } from "../choice/choose-places.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { SpotDays } from "../days/spot-days.ts";
import type { SpotPlan } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import { spreadOf } from "./spread-of.ts";

/** What each spot gets, by local day from now on, in walking order. */
export function spotRows(context: PlanContext, studies: readonly PotStudy[]): SpotPlan[] {
  const rooms = roomsLeft(context, studies);
  const order = (a: SpotDays, b: SpotDays) =>
    a.spot.walkOrder - b.spot.walkOrder || (a.spot.id < b.spot.id ? -1 : 1);
  return [...context.spots.values()].sort(order).map((at) => {
    const here = studies.filter((study) => study.here.at === at);
    return {
      spotId: at.spot.id,
      potCount: here.reduce((sum, { now }) => sum + (now.pot.count ?? 1), 0),
      placesLeft: rooms.get(at.spot.id)?.places ?? null,
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

function byLocalDay(context: PlanContext, { forcing, size }: SpotDays) {
  const weightFrac = new Float64Array(size).fill(1 / size);
  const rainByDayMm: Spread[] = [];
  const coldestByDayC: Spread[] = [];
  for (const { fromHour, toHour } of context.localDays) {
    const rain = new Float64Array(size);
    const coldest = new Float64Array(size).fill(Number.POSITIVE_INFINITY);
    for (let i = fromHour * size; i < toHour * size; i++) {
      rain[i % size]! += forcing.rainMm[i]!;
      coldest[i % size] = Math.min(coldest[i % size]!, forcing.plantTempC[i]!);
    }
    rainByDayMm.push(spreadOf({ values: rain, weightFrac }, 0.1));
    coldestByDayC.push(spreadOf({ values: coldest, weightFrac }, 0.1));
  }
  return { rainByDayMm, coldestByDayC };
}
