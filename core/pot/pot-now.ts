import type { JournalEntry } from "../journal/entry.ts";
import { potHistory } from "../journal/pot-history.ts";
import { componentsById } from "../mix/library.ts";
import type { MixInVessel } from "../mix/mix-in-vessel.ts";
import type { Collection } from "../plan/collection.ts";
import type { Settings } from "../plan/settings.ts";
import { type AftercareNow, aftercareNow } from "../plant/aftercare.ts";
import type { GroupValues } from "../plant/group.ts";
import { groupsById } from "../plant/groups.ts";
import type { RestNow } from "../plant/rest.ts";
import type { Problem } from "../problem.ts";
import type { SpotForcing } from "../site/forcing.ts";
import type { SpotId } from "../site/spot.ts";
import type { TankPlan } from "./balance/tank-of.ts";
import type { Cloud } from "./cloud.ts";
import { cloudOf, copyParticles } from "./particles.ts";
import type { Pot, PotId } from "./pot.ts";
import { fadedTo } from "./replay/faded-to.ts";
import type { PotState } from "./replay/pot-state.ts";
import { replay } from "./replay/replay.ts";
import type { ReplayContext } from "./replay/replay-context.ts";
import { knownWetness } from "./replay/run-to.ts";
import type { Vessel } from "./vessel.ts";

/** A pot as it stands at an instant: its journal replayed against the weather. */
export interface PotNow {
  readonly pot: Pot;
  /** The group's figures with the grower's own in their place. */
  readonly values: GroupValues;
  readonly vessel: Vessel;
  readonly inVessel: MixInVessel;
  readonly spotId: SpotId;
  readonly gone: boolean;
  readonly plantedUtcMs: number | null;
  readonly aftercare: AftercareNow | null;
  readonly rest: RestNow;
  readonly cloud: Cloud;
  readonly lastWateredUtcMs: number | null;
  /** Observations that no particle could explain, each with a likely question. */
  readonly doubts: readonly Problem[];
  /** Content, as a share of capacity, above which the base counts as waterlogged. */
  readonly wetAboveFrac: number;
  /** Share of a full plant's transpiration that lost roots and cut shoots leave. */
  readonly uptakeShareFrac: number;
}

/**
 * Every pot of a collection as it stands now. A pot without a `planted` entry is left out and told as a problem; so is
 * each entry that does not count.
 *
 * @param journal  settled: corrections and undos are carried out already
 * @param past  weather at each spot with one member, up to the whole hour of now
 */
export function potsNow(input: {
  collection: Collection;
  journal: readonly JournalEntry[];
  past: ReadonlyMap<SpotId, SpotForcing>;
  nowUtcMs: number;
  settings: Settings;
}): { pots: PotNow[]; problems: Problem[] } {
  const { collection, nowUtcMs } = input;
  const problems = strangers(input.journal, collection);
  const byPot = entriesByPot(input.journal);
  const shared = {
    latDeg: collection.site.latDeg,
    settings: input.settings,
    mixes: new Map(collection.mixes.map((mix) => [mix.id, mix])),
    components: componentsById(collection.ownComponents),
    past: input.past,
  };
  const groups = groupsById(collection.ownGroups);
  const places = {
    spots: new Set(collection.spots.map(({ id }) => id)),
    mixes: new Set(shared.mixes.keys()),
  };
  const pots: PotNow[] = [];
  for (const [i, pot] of collection.pots.entries()) {
    const group = groups.get(pot.groupId);
    if (group === undefined) {
      problems.push({
        code: "group-unknown",
        path: ["collection", "pots", i, "groupId"],
        data: { potId: pot.id },
      });
      continue;
    }
    const context = { ...shared, pot, values: { ...group.values, ...pot.own } };
    const history = potHistory(byPot.get(pot.id) ?? [], { pots: new Set([pot.id]), ...places, nowUtcMs });
    problems.push(...history.notes);
    const state = replay({ events: history.events, untilUtcMs: nowUtcMs }, context);
    const now = potNowOf(state, { context, gone: history.gone, nowUtcMs });
    if (now !== null) pots.push(now);
    else
      problems.push(...state.doubts, {
        code: "pot-not-planted",
        path: ["collection", "pots", i],
        data: { potId: pot.id },
      });
  }
  return { pots, problems };
}

/** What the balance needs to run a pot on. */
export function tankPlanOf(now: PotNow): TankPlan {
  return {
    inVessel: now.inVessel,
    vessel: now.vessel,
    values: now.values,
    canopyWidthCm: now.pot.canopyWidthCm,
    wetAboveFrac: now.wetAboveFrac,
    restingShareFrac: now.rest.restingShareFrac,
    rootsShareFrac: now.uptakeShareFrac,
  };
}

/** A state of the replay as others see it; null before the pot was planted. */
export function potNowOf(
  state: PotState,
  on: { context: ReplayContext; gone: boolean; nowUtcMs: number },
): PotNow | null {
  const { planting, care, warmth } = state;
  const known = knownWetness(state, on.context);
  if (planting === null || known === null) return null;
  const particles = copyParticles(known);
  fadedTo({ ...state, particles }, on.nowUtcMs, on.context);
  const expectedTempC = Number.isNaN(warmth.meanC) ? 20 : warmth.meanC;
  return {
    pot: on.context.pot,
    values: on.context.values,
    vessel: planting.vessel,
    inVessel: planting.inVessel,
    spotId: state.spotId,
    gone: on.gone,
    plantedUtcMs: planting.plantedUtcMs,
    aftercare: care === null ? null : aftercareNow(care, { utcMs: on.nowUtcMs, expectedTempC }),
    rest: state.rest,
    cloud: cloudOf(particles, planting.inVessel.hold),
    lastWateredUtcMs: state.lastWateredUtcMs,
    doubts: state.doubts,
    wetAboveFrac: planting.wetAboveFrac,
    uptakeShareFrac: state.rootsShareFrac * state.shootsShareFrac,
  };
}

function entriesByPot(entries: readonly JournalEntry[]): Map<PotId | undefined, JournalEntry[]> {
  const byPot = new Map<PotId | undefined, JournalEntry[]>();
  for (const entry of entries) {
    const list = byPot.get(entry.potId);
    if (list === undefined) byPot.set(entry.potId, [entry]);
    else list.push(entry);
  }
  return byPot;
}

/** Entries about pots that are not in the collection. */
function strangers(entries: readonly JournalEntry[], collection: Collection): Problem[] {
  const pots = new Set<PotId>(collection.pots.map((pot) => pot.id));
  return entries
    .filter(({ potId }) => potId !== undefined && !pots.has(potId))
    .map((entry) => ({
      code: "pot-unknown",
      path: ["journal", entry.id],
      data: { kind: entry.body.kind, potId: entry.potId },
    }));
}
