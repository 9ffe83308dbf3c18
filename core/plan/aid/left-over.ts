import { along } from "../choice/along.ts";
import type { CarryOption } from "../choice/carry-options.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import { rollCourse, stayingAt } from "../choice/roll-course.ts";
import type { Settled } from "../choice/settle-pots.ts";
import { sharedOut } from "../choice/shared-out.ts";
import { tripHarm } from "../choice/trouble.ts";
import { totalHarm } from "../harm/course.ts";
import { type HarmByTerm, WET_TERMS, type WetTerm } from "../harm/term.ts";
import type { PlanContext } from "../plan-context.ts";
import { airlessShareFrac } from "./airless.ts";
import { withoutRain } from "./rainless.ts";

/** Share of the cloud from which a base is told to have no air. */
const LIKELY_FRAC = 0.5;

/** What is still to be borne where a pot stands. */
export interface LeftOver {
  /** Harm by term and day; of what water does, only what rain brings: what is wet already dries no sooner under a cover. */
  readonly harm: HarmByTerm;
  /** Harm to the roots of what the pot has soaked up already, by day; null where its base most likely has air. */
  readonly soaked: Float64Array | null;
}

/**
 * What is left on the way that was settled, until the pot is first carried; what comes after it is back is left to the
 * brief of that day.
 */
export function leftOver(context: PlanContext, study: PotStudy, settled: Settled): LeftOver {
  const { chosen, harmOnWay } = settled;
  const days = chosen?.days ?? context.days.map(() => study.here !== study.home);
  const firstAway = days.indexOf(true);
  if (firstAway === 0)
    return { harm: {}, soaked: study.here === study.home ? null : whereAirless(study, underCover(study)) };
  const { harm, soaked } =
    chosen === null || chosen.carries === 0
      ? atHome(context, study)
      : onTheWay(context, study, { option: chosen, harmOnWay });
  const untilAway = (byDay: Float64Array) =>
    byDay.map((harm, d) => (firstAway > 0 && d >= firstAway ? 0 : harm));
  return {
    harm: Object.fromEntries(Object.entries(harm).map(([term, byDay]) => [term, untilAway(byDay)])),
    soaked: soaked === null ? null : whereAirless(study, untilAway(soaked)),
  };
}

function whereAirless({ now }: PotStudy, soaked: Float64Array | null): Float64Array | null {
  return soaked !== null && airlessShareFrac(now) >= LIKELY_FRAC ? soaked : null;
}

/** Under a roof no rain adds to it. */
function underCover({ here }: PotStudy): Float64Array | null {
  return here.at.rainMm.some((rainMm) => rainMm > 0) ? null : here.wet["wet-roots"];
}

/** What its own spot does to a pot, and what the rain there does beyond no rain at all. */
function atHome(context: PlanContext, { home, now }: PotStudy): LeftOver {
  const wet = WET_TERMS.reduce((sum, term) => sum + totalHarm({ byDay: home.wet[term] }), 0);
  if (wet < LEAST_TRIPS * tripHarm(context.settings)) return { harm: home.bySpot, soaked: null };
  const doings = stayingAt(withoutRain(context, home.at));
  const { harm: dry } = rollCourse(context, { now, doings, scratch: "tried" });
  return {
    harm: withRain(home, (term) => totalHarm({ byDay: home.wet[term] }) - totalHarm(dry[term])),
    soaked: dry["wet-roots"].byDay,
  };
}

/** The same for a pot that is carried: only the rain of its days at home is held against them. */
function onTheWay(
  context: PlanContext,
  { home, now, stander }: PotStudy,
  { option, harmOnWay }: { option: CarryOption; harmOnWay: Settled["harmOnWay"] },
): LeftOver {
  const doings = along(context, { stander, home: home.at, option });
  const wet = harmOnWay ?? rollCourse(context, { now, doings, scratch: "kept" }).harm;
  const rained = WET_TERMS.reduce((sum, term) => sum + totalHarm(wet[term]), 0);
  if (rained < LEAST_TRIPS * tripHarm(context.settings)) return { harm: home.bySpot, soaked: null };
  const dryHome = withoutRain(context, home.at).forcing;
  const stretches = doings.stretches.map((stretch) =>
    stretch.forcing === home.at.forcing ? { ...stretch, forcing: dryHome } : stretch,
  );
  const { harm: dry } = rollCourse(context, { now, doings: { ...doings, stretches }, scratch: "tried" });
  return {
    harm: withRain(home, (term) => totalHarm(wet[term]) - totalHarm(dry[term])),
    soaked: dry["wet-roots"].byDay,
  };
}

/** What the spot does by itself, and what rain adds, laid on the days that bring it. */
function withRain({ bySpot, pass }: PotStudy["home"], more: (term: WetTerm) => number): HarmByTerm {
  const { roots, wound } = pass.weights;
  return {
    ...bySpot,
    "wet-roots": sharedOut(more("wet-roots"), roots),
    "wet-wound": sharedOut(more("wet-wound"), wound),
    "wet-cold": sharedOut(more("wet-cold"), roots),
  };
}

/** Less harm than this many trips is not worth a look. Chosen by us: the least trouble that any aid takes. */
const LEAST_TRIPS = 0.15;
