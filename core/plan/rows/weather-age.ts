import { instantOf } from "../../site/instant.ts";
import type { WeatherReady } from "../../weather/ready.ts";
import { HOUR_MS, type Weather } from "../../weather/weather.ts";
import type { WeatherAge } from "../plan.ts";
import { roundTo } from "./round-to.ts";

/** Where the weather came from, how old it is and what stood in for what was missing. */
export function weatherAge(input: { ready: WeatherReady; weather: Weather; nowUtcMs: number }): WeatherAge {
  const { ready } = input;
  const { origin } = input.weather;
  return {
    source: origin.source,
    credit: origin.credit,
    fetchedAt: instantOf(origin.fetchedUtcMs),
    ageHours: roundTo(Math.max(0, (input.nowUtcMs - origin.fetchedUtcMs) / HOUR_MS), 0.1),
    memberCount: ready.realMemberCount,
    standIns: ready.standIns.map((one) => ({
      ...one,
      shareOfHoursFrac: roundTo(one.shareOfHoursFrac, 0.001),
      errorEstimate: roundTo(one.errorEstimate, 0.001),
    })),
    trust: ready.trust,
    knownHours: ready.knownHours,
  };
}
