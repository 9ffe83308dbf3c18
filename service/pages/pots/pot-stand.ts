import type { EntryBody, JournalEntry } from "../../../core/journal/entry.ts";
import { componentsById } from "../../../core/mix/library.ts";
import type { Mix } from "../../../core/mix/mix.ts";
import { type MixInVessel, mixInVessel } from "../../../core/mix/mix-in-vessel.ts";
import type { PotPlan } from "../../../core/plan/pot-plan.ts";
import type { Pot } from "../../../core/pot/pot.ts";
import type { Vessel } from "../../../core/pot/vessel.ts";
import type { SpotId } from "../../../core/site/spot.ts";
import type { SiteNow } from "../site-now.ts";

type Planted = Extract<EntryBody, { kind: "planted" }>;

import { type Need, nextNeed } from "./next-need.ts";

/** A pot as the journal leaves it: what it is planted in, where it stands, and what is planned for it. */
export interface PotStand {
  readonly pot: Pot;
  readonly spotId: SpotId;
  /** Null until a planting has been logged. */
  readonly planted: { readonly body: Planted; readonly atUtcMs: number } | null;
  readonly mix: Mix | null;
  readonly inVessel: MixInVessel | null;
  readonly potPlan: PotPlan | null;
  /** Null without a plan. */
  readonly need: Need | null;
}

/** Every pot that is still there. */
export function potStands(now: SiteNow): PotStand[] {
  const byPot = entriesByPot(now.journal);
  const components = componentsById(now.collection.ownComponents);
  const plans = new Map(now.plan?.pots.map((potPlan) => [potPlan.potId, potPlan]));
  return now.collection.pots
    .filter(({ id }) => !byPot.get(id)?.some(({ body }) => body.kind === "gone"))
    .map((pot) => {
      const entries = byPot.get(pot.id) ?? [];
      const planted = lastPlanting(entries);
      const potPlan = plans.get(pot.id) ?? null;
      const mix = now.collection.mixes.find(({ id }) => id === planted?.body.mixId) ?? null;
      return {
        pot,
        spotId: lastSpot(entries) ?? pot.firstSpotId,
        planted,
        mix,
        inVessel: planted && mix ? heldIn({ mix, vessel: planted.body.vessel, components }) : null,
        potPlan,
        need: potPlan && now.plan ? nextNeed(potPlan, now.plan) : null,
      };
    });
}

/** Water in the pot now, as the plan reckons it; null without a plan. */
export function waterMlNow({ potPlan }: PotStand): number | null {
  return potPlan === null ? null : potPlan.outlook.nowFrac.mid * potPlan.outlook.capacityMl;
}

const held = new Map<string, MixInVessel | null>();
const HELD_AT_MOST = 2000;

/** Kept by what goes in: a bench of like pots is reckoned once, not at every page. */
function heldIn(input: {
  mix: Mix;
  vessel: Vessel;
  components: ReturnType<typeof componentsById>;
}): MixInVessel | null {
  const used =
    input.mix.recipe.kind === "parts"
      ? input.mix.recipe.parts.map((part) => input.components.get(part.component))
      : [];
  const key = JSON.stringify([input.mix, input.vessel, used]);
  const known = held.get(key);
  if (known !== undefined) return known;
  const outcome = mixInVessel(input);
  if (held.size >= HELD_AT_MOST) held.clear();
  held.set(key, outcome.ok ? outcome.value : null);
  return outcome.ok ? outcome.value : null;
}

function entriesByPot(journal: readonly JournalEntry[]): Map<string, JournalEntry[]> {
  const byPot = new Map<string, JournalEntry[]>();
  for (const entry of journal) {
    if (entry.potId === undefined) continue;
    const entries = byPot.get(entry.potId);
    if (entries) entries.push(entry);
    else byPot.set(entry.potId, [entry]);
  }
  return byPot;
}

function lastPlanting(entries: readonly JournalEntry[]): PotStand["planted"] {
  const last = entries.findLast(({ body }) => body.kind === "planted");
  return last?.body.kind === "planted" ? { body: last.body, atUtcMs: last.atUtcMs } : null;
}

function lastSpot(entries: readonly JournalEntry[]): SpotId | null {
  const last = entries.findLast(({ body }) => body.kind === "moved");
  return last?.body.kind === "moved" ? last.body.toSpotId : null;
}
