import type { JournalEntry } from "../journal/entry.ts";
import { settleEntries } from "../journal/settle-entries.ts";
import type { PotId } from "../pot/pot.ts";
import { potsNow } from "../pot/pot-now.ts";
import type { Problem } from "../problem.ts";
import { homeSpots } from "./choice/home-spot.ts";
import { type PotStudy, studyPot } from "./choice/pot-study.ts";
import { type Settled, settlePots } from "./choice/settle-pots.ts";
import { planContext } from "./make-context.ts";
import type { PlanInput } from "./make-plan.ts";
import type { PlanContext } from "./plan-context.ts";
import type { Line } from "./rows/pot-row.ts";

/** All that was weighed for one plan: what the rows are made from, and what explains them. */
export interface Weighed {
  readonly context: PlanContext;
  /** By pot id. */
  readonly studies: readonly PotStudy[];
  readonly places: ReadonlyMap<PotId, Settled>;
  /** The journal as it stands: corrections and undos applied. */
  readonly entries: readonly JournalEntry[];
  /** The same, by pot. */
  readonly entriesOf: ReadonlyMap<PotId, readonly JournalEntry[]>;
  /** Pots and entries that do not count, and observations that no version of their pot explains. */
  readonly notes: readonly Problem[];
}

/** Looks at every pot and settles where each spends its days. */
export function weigh(input: PlanInput): Weighed {
  const { collection, nowUtcMs } = input;
  const { entries, notes } = settleEntries(input.journal);
  const { context, past } = planContext({ ...input, journal: entries });
  const { pots, problems } = input.pots
    ? { pots: input.pots, problems: [] }
    : potsNow({ collection, journal: entries, past, nowUtcMs, settings: input.settings });
  const spots = new Map(collection.spots.map((spot) => [spot.id, spot]));
  const homes = homeSpots({ pots: collection.pots, spots, journal: entries, nowUtcMs });
  const studies = pots
    .filter(({ gone, spotId }) => !gone && spots.has(spotId))
    .sort((a, b) => (a.pot.id < b.pot.id ? -1 : 1))
    .map((now) => studyPot(context, now, homes.get(now.pot.id)!));
  const doubts = studies.flatMap(({ now }) => now.doubts);
  const places = settlePots(context, studies);
  return {
    context,
    studies,
    places,
    entries,
    entriesOf: byPot(entries),
    notes: [...notes, ...problems, ...doubts],
  };
}

/** What one pot's line of the plan is made from. */
export function lineOf({ places, entriesOf }: Weighed, study: PotStudy): Line {
  const { id } = study.now.pot;
  return { study, settled: places.get(id)!, entries: entriesOf.get(id) ?? [] };
}

function byPot(entries: readonly JournalEntry[]): Map<PotId, JournalEntry[]> {
  const found = new Map<PotId, JournalEntry[]>();
  for (const entry of entries) {
    if (entry.potId === undefined) continue;
    const own = found.get(entry.potId);
    if (own === undefined) found.set(entry.potId, [entry]);
    else own.push(entry);
  }
  return found;
}
