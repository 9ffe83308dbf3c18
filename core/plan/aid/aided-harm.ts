import { tripHarm } from "../choice/trouble.ts";
import type { HarmByTerm } from "../harm/term.ts";
import type { Settings } from "../settings.ts";
import { BRACE, SHADE } from "./aids.ts";

/**
 * Harms for which a carry must do better than an aid. Not cold: a wrap takes off some of a night that hurts, and saves
 * nothing in one that kills.
 */
const AIDED = [
  { term: "wind", takesFrac: BRACE.takesFrac.wind, trips: BRACE.trips() },
  { term: "heat", takesFrac: SHADE.takesFrac.heat, trips: SHADE.trips() },
] as const;

/**
 * Harm of the days at home as it is with the aid that pays there, its trouble included and laid on the days by their
 * harm; so that nobody carries what a stake or a cloth would do for. Where no aid pays it is as it was.
 */
export function aidedHarm(home: HarmByTerm, settings: Pick<Settings, "tripWorth">): HarmByTerm {
  const aided = { ...home };
  for (const { term, takesFrac, trips } of AIDED) {
    const byDay = home[term];
    const whole = byDay?.reduce((sum, harm) => sum + harm, 0) ?? 0;
    if (byDay === undefined || whole <= 0) continue;
    const leftFrac = 1 - takesFrac + (trips * tripHarm(settings)) / whole;
    if (leftFrac < 1) aided[term] = byDay.map((harm) => harm * leftFrac);
  }
  return aided;
}
