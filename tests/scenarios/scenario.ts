import type { Action, Deed, ReasonCode } from "../../core/plan/deed.ts";
import { type PlanInput, planFrom } from "../../core/plan/make-plan.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { Hold } from "../../core/plan/pot-plan.ts";
import { DEFAULT_SETTINGS, type Settings } from "../../core/plan/settings.ts";
import { weigh } from "../../core/plan/weigh.ts";
import type { Spot, SpotId } from "../../core/site/spot.ts";
import { HOUR_MS } from "../../core/weather/weather.ts";
import { readCase } from "../../service/case/case-schema.ts";
import { PlanSchema } from "../../service/case/plan-schema.ts";
import { writeCase } from "../../service/case/write-case.ts";
import { entriesOf, MIXES, type PotStory, potOf, SPOTS } from "./scenario-pots.ts";
import { type Sky, skyWeather } from "./scenario-weather.ts";

/** A morning: the season, the sky, the pots, and what a good gardener would do. */
export interface Scenario {
  readonly situation: string;
  readonly why: string;
  readonly season?: "summer" | "spring" | "autumn" | "winter";
  /** Degrees north. */
  readonly latDeg?: number;
  /** Local clock of the brief; 6 when left out. */
  readonly clock?: number;
  readonly sky: Sky;
  readonly pots: readonly PotStory[];
  readonly spots?: readonly Spot[];
  readonly settings?: Partial<Settings>;
  readonly expected: Readonly<Record<string, Expected>>;
}

/** What is asked for one pot. Days count from today, 0 being today. */
export interface Expected {
  /** Deeds that are asked for on some day of the plan, whatever else is. */
  readonly asks?: readonly Action[];
  /** What is asked for today and tomorrow morning, first of all. */
  readonly first?: Action;
  /** Deeds that are not asked for at all. */
  readonly never?: readonly Action[];
  readonly reason?: ReasonCode;
  /** What is said to wait. */
  readonly holds?: readonly Hold["kind"][];
  readonly to?: SpotId;
  /** The carry is done before that hour of that day. */
  readonly before?: { readonly day: number; readonly clock: number };
  /** The carry out is not begun before that hour of that day. */
  readonly notBefore?: { readonly day: number; readonly clock: number };
  /** A deed is done between two hours of a day. */
  readonly between?: {
    readonly action: Action;
    readonly day: number;
    readonly clocks: readonly [number, number];
  };
  /** Why a pot that a carry would help is left where it stands. */
  readonly notCarried?: ReasonCode;
  /** Keeping dry lasts at least / at most to that day. */
  readonly dryAtLeast?: number;
  readonly dryAtMost?: number;
}

const DATES = {
  summer: "2031-07-15",
  spring: "2031-04-15",
  autumn: "2031-10-10",
  winter: "2031-01-15",
} as const;

export const todayOf = ({ season = "summer" }: Pick<Scenario, "season">) =>
  Date.parse(`${DATES[season]}T00:00Z`);

/** The morning as one case. */
export function caseOf(scenario: Scenario): PlanInput {
  const todayUtcMs = todayOf(scenario);
  const nowUtcMs = todayUtcMs + (scenario.clock ?? 6) * HOUR_MS;
  return {
    collection: {
      site: {
        id: "yard",
        name: "Yard",
        latDeg: scenario.latDeg ?? 44,
        lonDeg: 0,
        elevationM: 50,
        zone: "UTC",
      },
      spots: scenario.spots ?? SPOTS,
      mixes: MIXES,
      pots: scenario.pots.map(potOf),
    },
    journal: scenario.pots.flatMap((story) => entriesOf(story, todayUtcMs)),
    weather: skyWeather(scenario.sky, todayUtcMs, nowUtcMs),
    nowUtcMs,
    settings: { ...DEFAULT_SETTINGS, ...scenario.settings },
  };
}

/** The plan by the way of `leebench plan`: written as a case, read again, planned, printed, read as a plan. */
export function planOf(input: PlanInput): Plan {
  const read = readCase(JSON.parse(JSON.stringify(writeCase(input))));
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return PlanSchema.parse(JSON.parse(JSON.stringify(planFrom(weigh(read.value), read.value))));
}

/** All deeds of a pot, the first of them first. */
export function deedsOf(plan: Plan, potId: string): Deed[] {
  const row = plan.pots.find((pot) => pot.potId === potId);
  if (row === undefined) throw new Error(`no row for ${potId}`);
  return [row, ...row.then];
}
