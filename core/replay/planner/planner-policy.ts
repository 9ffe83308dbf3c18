import type { EntryBody, JournalEntry } from "../../journal/entry.ts";
import type { Collection } from "../../plan/collection.ts";
import { plan } from "../../plan/make-plan.ts";
import type { Plan } from "../../plan/plan.ts";
import type { Settings } from "../../plan/settings.ts";
import type { SpotForcing } from "../../site/forcing.ts";
import type { SpotId } from "../../site/spot.ts";
import type { Weather } from "../../weather/weather.ts";
import { NOTHING, type Policy } from "../policies/policy.ts";
import { knownPots, type Stage } from "../world/known-pot.ts";
import { deedOfRow } from "./deed-of-row.ts";
import { KeptPots } from "./kept-pots.ts";

/** What the planner is given in a replay. */
export interface PlannerFeed {
  readonly weatherAt: (day: number) => Weather;
  /** The feed's past at every spot as the grower entered it. */
  readonly past: ReadonlyMap<SpotId, SpotForcing>;
}

/** One way of running the planner; the ablations leave something out. */
export interface PlannerKind {
  readonly id: string;
  readonly settings: Settings;
  /** Whether the diary holds more than deeds: lifts, weighings, what ran out. */
  readonly learns: boolean;
  /** Whether the feed sends an ensemble. */
  readonly members: boolean;
}

/** All that a plan still reads of the diary when the pots are kept on: where they were put. */
const TELLS_PLACE: readonly EntryBody["kind"][] = ["planted", "moved"];
const OBSERVED: readonly EntryBody["kind"][] = ["checked", "weighed"];

/** The planner as a policy: each morning one plan from what the grower entered and what the feed sent. */
export function plannerPolicy(kind: PlannerKind, feed: PlannerFeed, onPlan?: (plan: Plan) => void): Policy {
  return {
    id: kind.id,
    begin(stage) {
      const collection = collectionOf(stage);
      const known = knownPots(stage);
      const kept = new KeptPots({ stage, known, settings: kind.settings, past: feed.past });
      const journal: JournalEntry[] = [];
      return {
        noted(entries) {
          const believed = kind.learns ? entries : entries.flatMap(withoutFindings);
          kept.note(believed);
          journal.push(...believed.filter(({ body }) => TELLS_PLACE.includes(body.kind)));
        },
        morning({ day, nowUtcMs, pots }) {
          const weather = feed.weatherAt(day);
          const made = plan({
            collection,
            journal,
            weather: kind.members ? weather : { ...weather, members: null },
            nowUtcMs,
            settings: kind.settings,
            pots: kept.at(nowUtcMs),
          });
          onPlan?.(made);
          const rows = new Map(made.pots.map((row) => [row.potId, row]));
          return pots.map(({ known: { pot } }) => {
            const row = rows.get(pot.id);
            return row === undefined ? NOTHING : deedOfRow(stage, row, nowUtcMs);
          });
        },
      };
    },
  };
}

/** The collection as its grower entered it. */
export function collectionOf(stage: Stage): Collection {
  return {
    site: stage.site,
    spots: stage.spots,
    mixes: stage.mixes,
    pots: stage.pots.map(({ pot }) => pot),
    ...(stage.ownComponents === undefined ? {} : { ownComponents: stage.ownComponents }),
    ...(stage.ownGroups === undefined ? {} : { ownGroups: stage.ownGroups }),
  };
}

/** Deeds without what was found out by them. */
function withoutFindings(entry: JournalEntry): JournalEntry[] {
  const { body } = entry;
  if (OBSERVED.includes(body.kind)) return [];
  if (body.kind === "watered" && body.given.kind === "poured-drained") {
    return [{ ...entry, body: { kind: "watered", given: { kind: "ran-through" } } }];
  }
  return [entry];
}
