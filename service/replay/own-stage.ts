import type { JournalEntry } from "../../core/journal/entry.ts";
import { settleEntries } from "../../core/journal/settle-entries.ts";
import { homeSpots } from "../../core/plan/choice/home-spot.ts";
import type { Collection } from "../../core/plan/collection.ts";
import type { Outcome, Problem } from "../../core/problem.ts";
import type { Stage, StagePot } from "../../core/replay/world/known-pot.ts";

/**
 * A grower's own pots as a stage: each in the vessel and the mix of its last planting, at its place in the open. Those that
 * are gone are left out; saucers are not played, and nothing is repotted.
 */
export function ownStage(of: {
  collection: Collection;
  journal: readonly JournalEntry[];
  nowUtcMs: number;
}): Outcome<Stage> {
  const { collection, nowUtcMs } = of;
  const { entries } = settleEntries(of.journal);
  const spots = new Map(collection.spots.map((spot) => [spot.id, spot]));
  const homes = homeSpots({ pots: collection.pots, spots, journal: entries, nowUtcMs });
  const problems: Problem[] = [];
  const pots = collection.pots.flatMap((pot, i): StagePot[] => {
    const own = entries.filter(({ potId }) => potId === pot.id);
    if (own.some(({ body }) => body.kind === "gone")) return [];
    const planted = own.map(({ body }) => body).findLast((body) => body.kind === "planted");
    if (planted?.kind !== "planted") {
      problems.push({ code: "pot-not-planted", path: ["collection", "pots", i], data: { potId: pot.id } });
      return [];
    }
    const { vessel, mixId } = planted;
    return [{ pot, vessel, mixId, homeSpotId: homes.get(pot.id)!.homeId, repot: null }];
  });
  if (problems.length === 0 && pots.length === 0) problems.push({ code: "no-pots", path: ["collection"] });
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, value: { ...collection, pots } };
}
