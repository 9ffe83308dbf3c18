import { type RandomStream, seededRandom, seedFrom } from "../core/weather/seeded-random.ts";
import type { Shower } from "./climate.ts";

/** How one member of the invented ensemble strays from the story, the more the farther ahead. */
export interface MemberBend {
  /** The member's own time in the story, days. */
  dayTimeOf(dayTime: number, leadDays: number): number;
  warmerC(leadDays: number): number;
  damperC(leadDays: number): number;
  readonly windFactor: number;
  readonly showers: readonly Shower[];
}

/** The member that follows the story to the letter. */
export function straight(showers: readonly Shower[]): MemberBend {
  return { dayTimeOf: (dayTime) => dayTime, warmerC: () => 0, damperC: () => 0, windFactor: 1, showers };
}

/**
 * Spreads chosen by us because they look like an ensemble's: some 0.5 °C today and 2.5 °C in a week, a front an hour
 * off tomorrow and a third of a day off in a week, one member in eight without tomorrow's storm.
 */
export function bent(input: {
  member: number;
  seed: number;
  showers: readonly Shower[];
  nowDay: number;
}): MemberBend {
  const chance = seededRandom(seedFrom([input.seed, 7_000 + input.member]));
  const early = 0.05 * chance.normal();
  const [warm, slow, damp] = [chance.normal(), chance.normal(), chance.normal()];
  return {
    dayTimeOf: (dayTime, leadDays) => dayTime + early * leadDays,
    warmerC: (leadDays) => (0.4 + 0.3 * leadDays) * (0.8 * warm + 0.6 * slow * Math.sin(leadDays)),
    damperC: (leadDays) => (0.4 + 0.25 * leadDays) * damp,
    windFactor: Math.exp(0.18 * chance.normal()),
    showers: [...bentShowers(input, chance), ...strayShowers(input.nowDay, chance)],
  };
}

function bentShowers(input: { showers: readonly Shower[]; nowDay: number }, chance: RandomStream): Shower[] {
  const amount = 0.45 * chance.normal() - 0.1;
  return input.showers.flatMap((shower) => {
    const leadDays = Math.max(0, shower.fromDay - input.nowDay);
    const misses = chance.uniform() < Math.min(0.4, 0.09 * leadDays);
    const later = (chance.normal() * (0.5 + 0.6 * leadDays)) / 24;
    const totalMm = shower.totalMm * Math.exp(amount + 0.3 * chance.normal());
    if (leadDays === 0) return [shower];
    return misses ? [] : [{ ...shower, fromDay: shower.fromDay + later, totalMm }];
  });
}

/** Rain that the story does not have, on one day in ten from the third day ahead. */
function strayShowers(nowDay: number, chance: RandomStream): Shower[] {
  return Array.from({ length: 12 }, (_, day) => ({
    at: nowDay + 3 + day + chance.uniform(),
    roll: chance.uniform(),
  }))
    .filter(({ roll }) => roll < 0.1)
    .map(({ at, roll }) => ({ fromDay: at, hours: 3, totalMm: 1 + 60 * roll, thunder: false }));
}
