import type { PotStudy } from "../choice/pot-study.ts";
import { rollCourse, stayingAt, type WetTerm } from "../choice/roll-course.ts";
import type { Settled } from "../choice/settle-pots.ts";
import { sharedOut } from "../choice/shared-out.ts";
import { tripHarm } from "../choice/trouble.ts";
import { totalHarm } from "../harm/course.ts";
import type { HarmByTerm } from "../harm/term.ts";
import type { PlanContext } from "../plan-context.ts";
import { withoutRain } from "./rainless.ts";

const WET: readonly WetTerm[] = ["wet-roots", "wet-wound", "wet-cold"];

/**
 * Harm by term and day that is still to be borne at home on the way that was settled. Of what water does, only what
 * rain brings: what is wet already dries no sooner under a cover.
 */
export function harmLeftOver(context: PlanContext, study: PotStudy, { chosen }: Settled): HarmByTerm {
  const days = chosen?.days ?? context.days.map(() => study.here !== study.home);
  if (days.every((away) => away)) return {};
  return Object.fromEntries(
    Object.entries(atHome(context, study)).map(([term, byDay]) => [
      term,
      byDay.map((harm, d) => (days[d] ? 0 : harm)),
    ]),
  );
}

/** What its own spot does to a pot, and what the rain there does beyond no rain at all. */
function atHome(context: PlanContext, { home, now }: PotStudy): HarmByTerm {
  const wet = WET.reduce((sum, term) => sum + totalHarm({ byDay: home.wet[term] }), 0);
  if (wet < LEAST_TRIPS * tripHarm(context.settings)) return home.bySpot;
  const doings = stayingAt(withoutRain(context, home.at));
  const dry = rollCourse(context, { now, doings, scratch: "tried" });
  const more = (term: WetTerm) =>
    sharedOut(
      totalHarm({ byDay: home.wet[term] }) - totalHarm(dry.harm[term]),
      term === "wet-wound" ? home.pass.weights.wound : home.pass.weights.roots,
    );
  return {
    ...home.bySpot,
    "wet-roots": more("wet-roots"),
    "wet-wound": more("wet-wound"),
    "wet-cold": more("wet-cold"),
  };
}

/** Less harm than this many trips is not worth a look. Chosen by us: the least trouble that any aid takes. */
const LEAST_TRIPS = 0.15;
