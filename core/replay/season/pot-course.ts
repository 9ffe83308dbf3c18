import { HOUR_MS } from "../../weather/weather.ts";
import { halfMonthOf } from "../policies/place-normals.ts";
import type { MorningDeed, PotView } from "../policies/policy.ts";
import { type Hands, handsOn } from "../world/hands.ts";
import { damageOf, harmSum, nuisanceOf, onlyWear } from "../world/harm-terms.ts";
import { repot } from "../world/plant-out.ts";
import { type Reckoning, runWorldHours, type WorldDeed } from "../world/run-hours.ts";
import type { WorldClock } from "../world/world-clock.ts";
import type { WorldPot } from "../world/world-pot.ts";
import type { WorldState } from "../world/world-state.ts";
import { carryOf, pourTrouble, shieldTrouble, type Trouble } from "./deeds-of-morning.ts";
import { emptyHarm, type PotSeason } from "./season-result.ts";

/**
 * One pot on its way through a season: its true state, what was done to it and what it came to. When the plant is lost
 * another of its kind takes its place and is looked after in the same way, so that nobody gains a winter without gloom
 * by losing a plant early; a year counts one loss a pot at most.
 */
export class PotCourse {
  readonly pot: WorldPot;
  readonly index: number;
  readonly #world: { readonly clock: WorldClock; readonly pot: WorldPot };
  readonly #trouble: Trouble;
  readonly #seed: number;
  readonly #into: Reckoning = { harm: emptyHarm(), pouredMl: 0, drainedMl: 0 };
  readonly #byHalfMonth = new Array<number>(24).fill(0);
  readonly state: WorldState;
  #sums = { trouble: 0, pours: 0, carries: 0, shields: 0, trips: 0, carriedKg: 0 };
  #lastWaterDay = Number.NEGATIVE_INFINITY;
  #plantedDay = Number.NEGATIVE_INFINITY;
  #lost = false;

  constructor(of: {
    clock: WorldClock;
    pot: WorldPot;
    index: number;
    trouble: Trouble;
    seed: number;
    first: WorldState;
  }) {
    this.pot = of.pot;
    this.index = of.index;
    this.#world = { clock: of.clock, pot: of.pot };
    this.#trouble = of.trouble;
    this.#seed = of.seed;
    this.state = of.first;
  }

  /** Harm and trouble so far. */
  get cost(): number {
    return harmSum(this.#into.harm) + this.#allTrouble();
  }

  hands(day: number): Hands {
    return handsOn(this.pot, this.state, { seed: this.#seed, day, pot: this.index });
  }

  view(day: number): PotView {
    const hands = this.hands(day);
    return {
      known: this.pot.known,
      spot: this.state.spot,
      sinceWaterDays: day - this.#lastWaterDay,
      sincePlantedDays: day - this.#plantedDay,
      roots: this.#plantedDay > Number.NEGATIVE_INFINITY ? "worked-on" : "settled",
      feel: hands.feel,
      dryToCm: hands.dryToCm,
    };
  }

  /** Repots if this is the day; tells whether it was. */
  repotOn(day: number, date: string): boolean {
    const { repot: plan, values } = this.pot.known;
    if (plan === null || Number(date.slice(5, 7)) !== plan.month || Number(date.slice(8)) !== plan.dayOfMonth)
      return false;
    repot(this.#world, this.state, { hour: this.#world.clock.roundHour[day]!, roots: plan.roots });
    this.#plantedDay = day;
    if (values.leafy) this.#lastWaterDay = day;
    return true;
  }

  /** Does a morning's deed and runs to the next morning. Returns what a diary would say of the deed. */
  live(day: number, date: Parameters<typeof halfMonthOf>[0], deed: MorningDeed): DoneDeed {
    const { clock } = this.#world;
    const before = this.cost;
    const fromHour = clock.roundHour[day]!;
    const carryHour = fromHour + (deed.carryAfterH ?? 0);
    const carries = this.#carry(deed);
    const deeds: WorldDeed[] = [];
    if (deed.pourMl > 0) {
      deeds.push({ hour: fromHour, pourMl: deed.pourMl, toSpot: null });
      this.#sums.pours++;
      this.#lastWaterDay = day;
    }
    if (carries) deeds.push({ hour: carryHour, pourMl: 0, toSpot: deed.toSpot });
    if (deed.shield !== undefined) deeds.push(this.#shield(deed.shield, fromHour));
    deeds.sort((a, b) => a.hour - b.hour);
    const toHour = clock.roundHour[day + 1]!;
    const pouredBefore = this.#into.pouredMl;
    const harmBefore = this.#into.harm.slice();
    runWorldHours(this.#world, this.state, { fromHour, toHour, deeds, into: this.#into });
    if (this.#lost) onlyWear(this.#into.harm, harmBefore);
    if (deed.pourMl > 0) this.#sums.trouble += pourTrouble(this.#trouble, this.#into.pouredMl - pouredBefore);
    this.#lost ||= damageOf(this.#into.harm) >= 1;
    this.#byHalfMonth[halfMonthOf(date)]! += this.cost - before;
    return {
      pouredMl: deed.pourMl,
      toSpot: carries ? deed.toSpot : null,
      carryHour,
      shielded: deed.shield !== undefined,
    };
  }

  result(): PotSeason {
    const { pot } = this.pot.known;
    return {
      potId: pot.id,
      groupId: pot.groupId,
      harmByTerm: Array.from(this.#into.harm),
      harm: harmSum(this.#into.harm),
      lost: this.#lost,
      litres: this.#into.pouredMl / 1000,
      ...this.#sums,
      trouble: this.#allTrouble(),
      costByHalfMonth: this.#byHalfMonth,
    };
  }

  #allTrouble(): number {
    return this.#sums.trouble + nuisanceOf(this.#into.harm);
  }

  /** One that stands already is left standing for as long as is now asked. */
  #shield(shield: NonNullable<MorningDeed["shield"]>, hour: number): WorldDeed {
    const stands = this.state.shieldUntilHour >= hour && this.state.letsInFrac === shield.letsInFrac;
    if (!stands) {
      this.#sums.shields++;
      this.#sums.trouble += shieldTrouble(this.#trouble, shield.trips);
    }
    const { letsInFrac, coldLeftFrac, hours } = shield;
    return {
      hour,
      pourMl: 0,
      toSpot: null,
      shield: { letsInFrac, coldLeftFrac, untilHour: hour + hours },
    };
  }

  #carry({ toSpot }: MorningDeed): boolean {
    if (toSpot === null || toSpot === this.state.spot) return false;
    const carry = carryOf(this.#trouble, this.pot, { state: this.state, toSpot });
    if (carry === null) return false;
    this.#sums.carries++;
    this.#sums.trips += carry.trips;
    this.#sums.carriedKg += carry.massKg;
    this.#sums.trouble += carry.harm;
    return true;
  }
}

/** What was done, for the diary. */
export interface DoneDeed {
  readonly pouredMl: number;
  readonly toSpot: number | null;
  readonly carryHour: number;
  readonly shielded: boolean;
}

/** Instant of an hour of the world. */
export function utcMsOfHour({ startUtcMs }: WorldClock, hour: number): number {
  return startUtcMs + hour * HOUR_MS;
}
