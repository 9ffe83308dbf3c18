import { tripHarm } from "../choice/trouble.ts";
import type { HarmByTerm, HarmTerm } from "../harm/term.ts";
import type { Lift } from "../plan.ts";
import type { Settings } from "../settings.ts";
import { AIDS } from "./aids.ts";

/**
 * Harms for which a carry must do better than an aid. Not cold: a wrap takes off some of a night that hurts, and saves
 * nothing in one that kills.
 */
const AIDED: readonly HarmTerm[] = ["wind", "heat"];

/**
 * Harm of the days at home as it is with the aid that pays there, its trouble included and laid on the days by their
 * harm; so that nobody carries what a stake or a cloth would do for. Where no aid pays it is as it was.
 */
export function aidedHarm(
  home: HarmByTerm,
  { lift, settings }: { lift: Lift; settings: Pick<Settings, "tripWorth"> },
): HarmByTerm {
  const possible = AIDS.filter((aid) => aid.isPossible({ lift }));
  const leftFrac = (term: HarmTerm, whole: number) =>
    Math.min(
      1,
      ...possible.map(
        ({ takesFrac, trips }) => 1 - (takesFrac[term] ?? 0) + (trips * tripHarm(settings)) / whole,
      ),
    );
  const aided = { ...home };
  for (const term of AIDED) {
    const byDay = home[term];
    const whole = byDay?.reduce((sum, harm) => sum + harm, 0) ?? 0;
    if (byDay === undefined || whole <= 0) continue;
    const frac = leftFrac(term, whole);
    if (frac < 1) aided[term] = byDay.map((harm) => harm * frac);
  }
  return aided;
}
