import type { EntryBody, JournalEntry } from "../../journal/entry.ts";
import type { Hands } from "../world/hands.ts";
import type { KnownPot, Stage } from "../world/known-pot.ts";
import type { DoneDeed } from "./pot-course.ts";

/** How often a grower writes down more than deeds. Chosen by us: a lift a week, a weighing a month, now and then a jug beneath. */
export const HABITS = {
  liftEveryDays: 7,
  weighEveryDays: 28,
  /** Every so many waterings the jug stands beneath. */
  measuredEvery: 5,
  /** Heavier pots are not put on a kitchen scale. */
  scaleMostKg: 10,
} as const;

/** One pot's entries of one morning, in the order in which they happen. */
export function entriesOfMorning(of: {
  known: KnownPot;
  stage: Stage;
  day: number;
  potIndex: number;
  hands: Hands;
  done: DoneDeed;
  /** Waterings so far, this one included. */
  pours: number;
  roundUtcMs: number;
  carryUtcMs: number;
}): JournalEntry[] {
  const bodies: { atUtcMs: number; body: EntryBody }[] = [];
  const note = (body: EntryBody, atUtcMs = of.roundUtcMs) => bodies.push({ atUtcMs, body });
  if ((of.day + of.potIndex) % HABITS.liftEveryDays === 0) note({ kind: "checked", feel: of.hands.feel() });
  if ((of.day + of.potIndex) % HABITS.weighEveryDays === 3) {
    const massKg = of.hands.massKg();
    if (massKg <= HABITS.scaleMostKg) note({ kind: "weighed", massKg });
  }
  if (of.done.pouredMl > 0) note({ kind: "watered", given: givenOf(of) });
  if (of.done.toSpot !== null) {
    note({ kind: "moved", toSpotId: of.stage.spots[of.done.toSpot]!.id }, of.carryUtcMs);
  }
  return bodies.map(({ atUtcMs, body }, i) => ({
    id: `${of.known.pot.id}-${of.day}-${i}`,
    atUtcMs,
    recordedUtcMs: atUtcMs,
    potId: of.known.pot.id,
    body,
  }));
}

/** The planting that a pot's history begins with, or begins anew with. */
export function plantedEntry(of: {
  known: KnownPot;
  atUtcMs: number;
  id: string;
  anew: boolean;
  mixWet: "dry" | "moist" | "watered-in";
}): JournalEntry {
  const { known } = of;
  return {
    id: of.id,
    atUtcMs: of.atUtcMs,
    recordedUtcMs: of.atUtcMs,
    potId: known.pot.id,
    body: {
      kind: "planted",
      vessel: known.vessel,
      mixId: known.mixId,
      roots: of.anew ? known.repot!.roots : "undisturbed",
      mixWet: of.mixWet,
    },
  };
}

function givenOf(of: { done: DoneDeed; pours: number; hands: Hands }) {
  if (of.done.pouredMl !== Number.POSITIVE_INFINITY) {
    return { kind: "measured", waterMl: of.done.pouredMl } as const;
  }
  if (of.pours % HABITS.measuredEvery !== 0) return { kind: "ran-through" } as const;
  return { kind: "poured-drained", ...of.hands.pouredDrainedMl() } as const;
}
