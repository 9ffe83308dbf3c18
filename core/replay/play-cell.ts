import type { Plan } from "../plan/plan.ts";
import { DEFAULT_SETTINGS, type Settings } from "../plan/settings.ts";
import { bestCourse } from "./bound/best-course.ts";
import { POLICIES, type PolicyEntry } from "./policy-list.ts";
import { type Belief, emptyBelief, watchPot } from "./score/content-watch.ts";
import { addOutcome } from "./score/reliability.ts";
import { firstState } from "./season/first-state.ts";
import { playSeason, type Watch } from "./season/play-season.ts";
import type { Season } from "./season/season.ts";
import type { PotSeason } from "./season/season-result.ts";
import type { SeedWorld } from "./season/world-of-seed.ts";

/** One season of one seed at one place under all policies asked for: what is kept when a replay is broken off. */
export interface CellResult {
  readonly placeId: string;
  readonly seed: number;
  readonly year: number;
  readonly policies: readonly PolicyResult[];
  /** By pot: the best that could have been done; empty when it was not asked for. */
  readonly bound: readonly PotBound[];
  /** What the planner believed; null when it was not asked for. */
  readonly belief: Belief | null;
}

export interface PolicyResult {
  readonly id: string;
  readonly morningsWithWork: number;
  readonly pots: readonly PotSeason[];
}

export interface PotBound {
  readonly potId: string;
  readonly groupId: string;
  readonly cost: number;
  readonly harm: number;
  readonly harmByTerm: readonly number[];
  readonly trouble: number;
}

export interface CellAsk {
  readonly placeId: string;
  readonly seed: number;
  readonly year: number;
  readonly policyIds: readonly string[];
  /** Cells of the bound's states, 1 being usual; null leaves the bound out. */
  readonly fineness: number | null;
}

/** The grower's choices in a replay: the usual ones with the seed of the cell. */
export function replaySettings(seed: number): Settings {
  return { ...DEFAULT_SETTINGS, seed };
}

/** @param onPart  told after every policy and after the bound, how many of how many are done */
export function playCell(
  world: SeedWorld,
  ask: CellAsk,
  onPart?: (at: { done: number; total: number }) => void,
): CellResult {
  const season = world.seasonOf(ask.year);
  let belief: Belief | null = null;
  const total = ask.policyIds.length + (ask.fineness === null ? 0 : 1);
  const policies = ask.policyIds.map((id, i): PolicyResult => {
    const entry = POLICIES.find((one) => one.id === id);
    if (entry === undefined) throw new RangeError(`policy ${id} is not known`);
    const played = playOne(world, season, { entry, seed: ask.seed });
    if (entry.kind === "planner") belief = played.belief;
    onPart?.({ done: i + 1, total });
    return { id, ...played.outcome };
  });
  const { placeId, seed, year } = ask;
  return { placeId, seed, year, policies, bound: boundOf(season, ask.fineness), belief };
}

function playOne(world: SeedWorld, season: Season, of: { entry: PolicyEntry; seed: number }) {
  const belief = emptyBelief();
  let latest: Plan | null = null;
  const policy = of.entry.make({
    feed: world.feed,
    settings: replaySettings(of.seed),
    onPlan: (plan) => {
      latest = plan;
    },
  });
  const watch: Watch = ({ day, month, courses }) => {
    if (latest !== null) watchMorning(belief, season, { plan: latest, day, month, courses });
  };
  const outcome = playSeason(season, policy, of.entry.kind === "planner" ? watch : undefined);
  return { outcome, belief };
}

function watchMorning(belief: Belief, season: Season, of: { plan: Plan } & Parameters<Watch>[0]): void {
  const { axis, clock } = season;
  const { plan, day, month } = of;
  for (const course of of.courses) {
    const row = plan.pots.find(({ potId }) => potId === course.pot.known.pot.id);
    if (row !== undefined) watchPot(belief, { row, course, day, month, axis, clock });
  }
  const [today] = plan.days;
  const from = clock.roundHour[day]!;
  let rainMm = 0;
  for (let hour = from; hour < axis.days[day]!.toHour; hour++) rainMm += season.trueRainMm[hour]!;
  if (today !== undefined) addOutcome(belief.rain, today.rainShareFrac, rainMm >= 1);
}

function boundOf(season: Season, fineness: number | null): PotBound[] {
  if (fineness === null) return [];
  return season.pots.map((pot) => {
    const { id, groupId } = pot.known.pot;
    const { cost, harm, harmByTerm, trouble } = bestCourse(season, {
      pot,
      first: firstState(season, pot),
      fineness,
    });
    return { potId: id, groupId, cost, harm, harmByTerm, trouble };
  });
}
