import type { RandomStream } from "../../weather/seeded-random.ts";
import type { ErrorBook, Quantity } from "./error-book.ts";

/** How far the ensemble's centre errs with the single run. Chosen by us: both start from one analysis. */
const CENTRE_WITH_RUN = 0.9;
/** A member's course wanders from day to day. Chosen by us. */
const MEMBER_DAY_TO_DAY = 0.6;
/** Spread of members over the error that it should show, at lead 0 and from day 7 on. */
const SPREAD_OVER_ERROR = { first: 0.5, later: 0.6, laterDay: 7 } as const;

/** Standard errors of one course on one day. */
export interface StandardErrors extends Readonly<Record<Quantity, number>> {
  /** A member's departure in rain from the centre: how wide, and its number; null for a centre or a single run. */
  readonly own: { readonly share: number; readonly z: number } | null;
}

const QUANTITIES: readonly Quantity[] = ["max", "min", "dew", "wind", "sun", "shift", "rain"];

/** Errors of the single run, or of the centre of the ensemble, which has a part of its own. */
export function centreErrors(
  book: ErrorBook,
  at: { lead: number; day: number; ofEnsemble: boolean },
): StandardErrors {
  const value = (name: Quantity) => {
    const run = book.run[name].at(at.lead, at.day);
    if (!at.ofEnsemble) return run;
    const other = book.ensemble[name].at(at.lead, at.day);
    return CENTRE_WITH_RUN * run + Math.sqrt(1 - CENTRE_WITH_RUN ** 2) * other;
  };
  return { ...record(value), own: null };
}

/**
 * A member about its centre. Members are too sure: their spread is half of the error at a day ahead (Hannover, our
 * reckoning from open data of 2015-20), and three fifths of it from a week on, chosen by us so
 * that shares of members mislead at days 5 to 8 as those at Innsbruck do. [GEFSINNSBRUCK, our reckoning]
 * @param of.walk one number a quantity, moved on from day to day
 */
export function memberErrors(
  centre: StandardErrors,
  of: { walk: Float64Array; lead: number; random: RandomStream },
): StandardErrors {
  const { walk, lead, random } = of;
  const { first, later, laterDay } = SPREAD_OVER_ERROR;
  const share = first + (later - first) * Math.min(1, lead / laterDay);
  const kept = lead === 0 ? 0 : MEMBER_DAY_TO_DAY;
  for (let i = 0; i < QUANTITIES.length; i++) {
    walk[i] = kept * walk[i]! + Math.sqrt(1 - kept ** 2) * random.normal();
  }
  const value = (name: Quantity) =>
    // Rain departs in its score, where its climate can be kept.
    name === "rain" ? centre.rain : centre[name] + share * walk[QUANTITIES.indexOf(name)]!;
  return { ...record(value), own: { share, z: walk[QUANTITIES.indexOf("rain")]! } };
}

/** Room for one member's walk. */
export function newWalk(): Float64Array {
  return new Float64Array(QUANTITIES.length);
}

function record(value: (name: Quantity) => number): Record<Quantity, number> {
  return {
    max: value("max"),
    min: value("min"),
    dew: value("dew"),
    wind: value("wind"),
    sun: value("sun"),
    rain: value("rain"),
    shift: value("shift"),
  };
}
