import type { HarmByTerm } from "../harm/term.ts";
import { type DayCosts, sumByDay } from "./day-costs.ts";

/** Cold of one night from which a plant counts as lost. Chosen by us. */
const LOST_HARM = 0.9;

/**
 * Harm that days under cover save. A plant is lost once: where the cold there takes it as well, only its worst night
 * is held against the worst at home and wet roots in the cold not at all, so that nobody carries a tub for a degree less
 * of nights that kill it either way.
 */
export function savedByCarry({ costs, days }: { costs: DayCosts; days: readonly boolean[] }): number {
  const underCover = (harmOn: (d: number) => number) => days.map((isAway, d) => (isAway ? harmOn(d) : 0));
  const colds = [costs.home, costs.away].map(({ cold }) => underCover((d) => cold?.[d] ?? 0));
  const isLost = Math.max(...colds[1]!) >= LOST_HARM;
  const [home, away] = [costs.home, costs.away].map((harm) =>
    sumByDay(isLost ? apartFromCold(harm) : harm, days.length),
  );
  const saved = total(underCover((d) => home![d]! - away![d]!));
  return isLost ? saved + Math.max(0, worst(colds[0]!) - worst(colds[1]!)) : saved;
}

function apartFromCold({ cold: _, "wet-cold": __, ...others }: HarmByTerm): HarmByTerm {
  return others;
}

function total(harm: readonly number[]): number {
  return harm.reduce((sum, one) => sum + one, 0);
}

function worst(harm: readonly number[]): number {
  return Math.min(1, Math.max(...harm));
}
