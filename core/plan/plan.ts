import type { PotId } from "../pot/pot.ts";
import type { Instant } from "../site/instant.ts";
import type { CalendarDay } from "../site/site.ts";
import type { SpotId } from "../site/spot.ts";
import type { Spread } from "../weather/spread.ts";
import type { Action } from "./deed.ts";
import type { PotPlan } from "./pot-plan.ts";
import type { Calibration } from "./score/calibration.ts";

/**
 * The plan is a value: codes and numbers only, no sentence. Pages, mail, push, calendar and command line render it;
 * nothing computes advice a second way.
 */
export interface Plan {
  readonly version: 1;
  readonly siteId: string;
  readonly zone: string;
  readonly issuedAt: Instant;
  readonly forDay: CalendarDay;
  /** The hours reckoned with. */
  readonly horizon: { readonly from: Instant; readonly to: Instant };
  readonly weatherAge: WeatherAge;
  /** One a pot, in walking order; a pot that needs nothing has action "none". */
  readonly pots: readonly PotPlan[];
  readonly spots: readonly SpotPlan[];
  readonly days: readonly DayOutline[];
  /** Weather ahead that lasts or passes a limit of the pots, earliest first; left out when there is none. */
  readonly spells?: readonly SkySpell[];
  readonly workWindows: readonly WorkWindow[];
  readonly cautions: readonly Caution[];
  readonly changesSince: readonly Change[];
  /** How far what was told in past plans came true; left out while none is known. */
  readonly kept?: Calibration;
}

export interface WeatherAge {
  readonly source: "primary" | "fallback" | "demo" | "case";
  readonly credit: string;
  readonly fetchedAt: Instant;
  readonly ageHours: number;
  /** Real members in the ensemble; 0 when the spread was drawn from published forecast errors. */
  readonly memberCount: number;
  /** What stood in for inputs that were missing, with its price in certainty. */
  readonly standIns: readonly StandIn[];
  readonly trust: "full" | "reduced" | "poor";
  /** Whole hours from `horizon.from` that could be reckoned. */
  readonly knownHours: number;
}

export interface StandIn {
  readonly quantity:
    | "radiation"
    | "humidity"
    | "wind"
    | "rain"
    | "temperature"
    | "et0"
    | "members"
    | "whole-forecast";
  readonly method: string;
  readonly shareOfHoursFrac: number;
  /** Relative error of daily ET0, or absolute error in the unit of the quantity, as the method's source gives it. */
  readonly errorEstimate: number;
}

export interface SpotPlan {
  readonly spotId: SpotId;
  readonly potCount: number;
  /** Places that are free as the pots stand now; null where they are not counted. */
  readonly placesLeft: number | null;
  /** What the pots weigh that stand there, and would weigh soaked: a floor has limits. */
  readonly loadKg?: { readonly now: number; readonly soaked: number };
  readonly rainByDayMm: readonly Spread[];
  /** At leaf level in the night that begins in the evening of the day; left out where its morning is not known. */
  readonly coldestByDayC: readonly Spread[];
}

/** The sky over the site, by day. */
export interface DayOutline {
  readonly day: CalendarDay;
  readonly rainMm: Spread;
  readonly rainShareFrac: number;
  readonly peakRainMmPerH: number;
  readonly tempMinC: Spread;
  readonly tempMaxC: Spread;
  readonly gustMPerS: number;
  readonly et0Mm: number;
  /** Hours with thunder in reach, as instants at which the hour begins. */
  readonly thunderHours: readonly Instant[];
}

/**
 * A spell ahead. Wet: likely rain. Cold, hot, gusts: beyond the line at which the first of the pots suffers.
 */
export interface SkySpell {
  readonly kind: "wet" | "cold" | "hot" | "gusts";
  readonly from: Instant;
  /** Left out when it outlasts the hours reckoned. */
  readonly to?: Instant;
  /** Share of the courses of weather that bring it; 1 where only one course is known. */
  readonly shareFrac: number;
  readonly numbers: Readonly<Record<string, number>>;
}

export interface WorkWindow {
  readonly from: Instant;
  readonly to: Instant;
  readonly dryShareFrac: number;
  readonly hottestHeatIndexC: number;
  readonly dryDaysAfter: number;
  /** When to begin soaking or damping down what the mixes in use need, where there is still time for it. */
  readonly prepareFrom?: Instant;
}

export interface Caution {
  readonly code:
    | "thunder"
    | "heat"
    | "lift"
    | "sap"
    | "old-weather"
    | "no-ensemble"
    | "official-warnings"
    | "no-room";
  readonly potIds: readonly PotId[];
  readonly from?: Instant;
  readonly to?: Instant;
  readonly numbers: Readonly<Record<string, number | string>>;
}

export interface Change {
  readonly potId: PotId;
  readonly was: Action;
  readonly is: Action;
  readonly because: "weather" | "journal" | "day-passed";
}
