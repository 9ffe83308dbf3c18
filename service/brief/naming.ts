import type { Collection } from "../../core/plan/collection.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { CalendarDay } from "../../core/site/site.ts";
import type { Words } from "../words/words.ts";

/** What every line of the brief needs to name pots, places and hours. */
export interface Naming {
  readonly words: Words;
  readonly plan: Plan;
  potName(potId: string): string;
  spotName(spotId: string): string;
  /** Whether nothing there keeps the rain off. */
  isOpen(spotId: string): boolean;
  /** An instant of the plan as the grower says it on the day of the brief. */
  when(instant: string): string;
  /** The same, said under the heading of another day. */
  onDay(day: CalendarDay): Naming;
}

/** Names for a plan; a pot or spot deleted since the plan was made keeps its id, so that no line is lost. */
export function namingFor(input: { plan: Plan; collection: Collection; words: Words }): Naming {
  const { plan, collection, words } = input;
  const pots = new Map(collection.pots.map((pot) => [pot.id, pot]));
  const spots = new Map(collection.spots.map((spot) => [spot.id, spot]));
  const potName = (potId: string): string => {
    const pot = pots.get(potId);
    return words.say("deed.pots", { name: pot?.name ?? potId, potCount: pot?.count ?? 1 });
  };
  const onDay = (today: CalendarDay): Naming => ({
    words,
    plan,
    potName,
    spotName: (spotId) => spots.get(spotId)?.name ?? spotId,
    isOpen: (spotId) => spots.get(spotId)?.kind === "open",
    when: (instant) => words.when(Date.parse(instant), { zone: plan.zone, today }),
    onDay,
  });
  return onDay(plan.forDay);
}
