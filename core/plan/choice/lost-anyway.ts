import { type DayCosts, sumByDay } from "./day-costs.ts";

/** Cold of one night from which a plant counts as lost. Chosen by us. */
const LOST_HARM = 0.9;

/**
 * Harm that days under cover save. A plant is lost once: where the cold there takes it as well, only its worst night
 * is held against the worst at home, so that nobody carries a tub for a degree less of nights that kill it either way.
 */
export function savedByCarry({ costs, days }: { costs: DayCosts; days: readonly boolean[] }): number {
  const [home, away] = [sumByDay(costs.home, days.length), sumByDay(costs.away, days.length)];
  const underCover = (harmOn: (d: number) => number) => days.map((isAway, d) => (isAway ? harmOn(d) : 0));
  const saved = total(underCover((d) => home[d]! - away[d]!));
  const coldHome = underCover((d) => costs.home.cold?.[d] ?? 0);
  const coldAway = underCover((d) => costs.away.cold?.[d] ?? 0);
  if (Math.max(...coldAway) < LOST_HARM) return saved;
  return saved - (total(coldHome) - total(coldAway)) + Math.max(0, worst(coldHome) - worst(coldAway));
}

function total(harm: readonly number[]): number {
  return harm.reduce((sum, one) => sum + one, 0);
}

function worst(harm: readonly number[]): number {
  return Math.min(1, Math.max(...harm));
}
