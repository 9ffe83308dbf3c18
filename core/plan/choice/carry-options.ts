import { aidedHarm } from "../aid/aided-harm.ts";
import type { SpotDays } from "../days/spot-days.ts";
import type { Lift } from "../deed.ts";
import type { Settings } from "../settings.ts";
import { carryDays } from "./carry-days.ts";
import { type DayCosts, dayCosts, sumByDay } from "./day-costs.ts";
import { savedByCarry } from "./lost-anyway.ts";
import { type Standing, standingHarm } from "./standing.ts";
import { canBeCarried, carryTrips, tripHarm } from "./trouble.ts";

/** One way of spending the horizon between home and one other spot. */
export interface CarryOption {
  readonly away: SpotDays;
  readonly days: readonly boolean[];
  readonly carries: number;
  /** Carries, with the way back that is still owed at the end and what a short outing counts more, in trips of 10 kg over level ground. */
  readonly trips: number;
  readonly harm: number;
  /** Harm and trouble. */
  readonly cost: number;
  readonly costs: DayCosts;
}

/** What an outing of a day counts beyond its two carries: it is out by the evening and in again before the next. Chosen by us. */
const SHORT_OUT_CARRIES = 2;

/** Days out between two stays under cover that are over as soon as begun. */
function shortOuts(days: readonly boolean[], startsAway: boolean): number {
  return days.filter((away, d) => !away && (days[d - 1] ?? startsAway) && days[d + 1] === true).length;
}

/**
 * Ways to spend the horizon between home and another spot, one for each number of carries, staying included, but no
 * carry in that saves less than its trouble. A pot that ends the horizon away owes the carry back. One that cannot be
 * carried has the one way: to stay.
 */
export function carryOptions(input: {
  home: Standing;
  away: Standing;
  startsAway: boolean;
  lift: Lift;
  settings: Pick<Settings, "tripWorth">;
}): CarryOption[] {
  const { home, away, lift, settings } = input;
  const dayCount = home.thirst.length;
  const bare = dayCosts(home, away);
  const costs = { ...bare, home: aidedHarm(bare.home, settings) };
  const way = { lift, from: home.at.spot, to: away.at.spot };
  const movable = canBeCarried(way);
  const oneWay = movable ? carryTrips(way) : 0;
  const shared = standingHarm({ ...away, bySpot: {} });
  return carryDays({
    homeHarm: sumByDay(costs.home, dayCount),
    awayHarm: sumByDay(costs.away, dayCount),
    startsAway: input.startsAway,
  })
    .filter(({ carries }) => movable || carries === 0)
    .map(({ carries, away: days, harm }) => {
      const owed = days.at(-1) === true ? 1 : 0;
      const trips = (carries + owed + SHORT_OUT_CARRIES * shortOuts(days, input.startsAway)) * oneWay;
      const whole = harm + shared;
      return {
        away: away.at,
        days,
        carries,
        trips,
        harm: whole,
        cost: whole + tripHarm(settings) * trips,
        costs,
      };
    })
    .filter(
      (option) =>
        option.carries === 0 || input.startsAway || savedByCarry(option) > tripHarm(settings) * option.trips,
    );
}
