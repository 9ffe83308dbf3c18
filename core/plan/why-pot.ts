import type { PotId } from "../pot/pot.ts";
import type { CalendarDay } from "../site/site.ts";
import type { SpotId } from "../site/spot.ts";
import type { CarryOption } from "./choice/carry-options.ts";
import type { Place } from "./choice/choose-places.ts";
import type { PotStudy } from "./choice/pot-study.ts";
import { standingHarm } from "./choice/standing.ts";
import type { WaterChoice } from "./choice/water-choice.ts";
import { type HarmByTerm, type HarmTerm, sumOf } from "./harm/term.ts";
import type { PotPlan } from "./pot-plan.ts";
import { potRow } from "./rows/pot-row.ts";
import { lineOf, type Weighed } from "./weigh.ts";

/** Harm by term and day, 1 = the plant as good as lost; terms that are nothing on every day are left out. */
export type HarmTable = Readonly<Partial<Record<HarmTerm, readonly number[]>>>;

/** One way of spending the horizon that was weighed. */
export interface WhyCandidate {
  /** The other spot; null for a pot to which nothing happens that a carry could mend. */
  readonly otherSpotId: SpotId | null;
  /** By day: whether it is spent at the other spot. */
  readonly away: readonly boolean[];
  readonly carries: number;
  /** In trips of a 10 kg pot over level ground, a carry back that is still owed included. */
  readonly trips: number;
  /** What the days cost, each at the spot where it is spent. */
  readonly harmByTerm: HarmTable;
  /** Harm by way of water that no choice of days changes: what every place shares, and the can or the thirst. */
  readonly harmEitherWay: number;
  readonly harm: number;
  readonly trouble: number;
  readonly cost: number;
  readonly chosen: boolean;
  /** The one that would have been chosen with room for all. */
  readonly wished: boolean;
}

/** Every number that one pot's line of the plan came from. */
export interface Why {
  readonly potId: PotId;
  readonly days: readonly CalendarDay[];
  readonly row: PotPlan;
  readonly homeSpotId: SpotId;
  /** Harm where it stands if nothing is done at all. */
  readonly harmIfLeft: HarmTable;
  readonly candidates: readonly WhyCandidate[];
  readonly water: WaterChoice & {
    /** Cost of the next water on each morning; the last is none within the horizon. */
    readonly costByMorning: readonly number[];
  };
}

/** How one pot's deeds came about; null for a pot that is not in the plan. */
export function whyPot(weighed: Weighed, potId: PotId): Why | null {
  const { context, studies, places } = weighed;
  const study = studies.find(({ now }) => now.pot.id === potId);
  const place = places.get(potId);
  if (study === undefined || place === undefined) return null;
  return {
    potId,
    days: context.days.map(({ day }) => day),
    row: potRow(context, lineOf(weighed, study)),
    homeSpotId: study.home.at.spot.id,
    harmIfLeft: tableOf({ ...study.here.bySpot, ...study.here.wet, thirst: study.here.thirst }),
    candidates:
      study.options.length > 0 ? study.options.map((option) => candidate(option, place)) : [staying(study)],
    water: { ...place.water, costByMorning: place.water.wait.byMorning },
  };
}

function candidate(option: CarryOption, { chosen, wished }: Place): WhyCandidate {
  const spent = alongDays(option);
  const { away, days, carries, trips, harm, cost } = option;
  return {
    otherSpotId: away.spot.id,
    away: days,
    carries,
    trips,
    harmByTerm: tableOf(spent),
    harmEitherWay: harm - sumOf(spent),
    harm,
    trouble: cost - harm,
    cost,
    chosen: option === chosen,
    wished: option === wished,
  };
}

/** Each day's harm at the place where the option spends it. */
function alongDays({ costs, days }: CarryOption): HarmByTerm {
  const terms = [...new Set([...Object.keys(costs.home), ...Object.keys(costs.away)])] as HarmTerm[];
  const column = (term: HarmTerm) =>
    Float64Array.from(days, (isAway, d) => (isAway ? costs.away : costs.home)[term]?.[d] ?? 0);
  return Object.fromEntries(terms.map((term) => [term, column(term)]));
}

/** A pot for which no carry was thought of: what its spot and its water do, the next water given when it costs least. */
function staying({ here }: PotStudy): WhyCandidate {
  const spent: HarmByTerm = { ...here.bySpot, ...here.wet };
  const harm = standingHarm(here);
  return {
    otherSpotId: null,
    away: Array.from(here.thirst, () => false),
    carries: 0,
    trips: 0,
    harmByTerm: tableOf(spent),
    harmEitherWay: harm - sumOf(spent),
    harm,
    trouble: 0,
    cost: harm,
    chosen: true,
    wished: true,
  };
}

function tableOf(harm: HarmByTerm): HarmTable {
  const rows = Object.entries(harm).filter(([, byDay]) => byDay.some((value) => value !== 0));
  return Object.fromEntries(rows.map(([term, byDay]) => [term, Array.from(byDay)]));
}
