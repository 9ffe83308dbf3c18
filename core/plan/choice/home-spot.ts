import type { JournalEntry } from "../../journal/entry.ts";
import type { Pot, PotId } from "../../pot/pot.ts";
import type { Spot, SpotId } from "../../site/spot.ts";

/** Days at a more sheltered spot in the open after which it counts as the pot's own. Chosen by us: two weeks. */
const SETTLED_DAYS = 14;
const DAY_MS = 86_400_000;

export interface HomeSpot {
  readonly homeId: SpotId;
  /** When it came to where it stands now; null when it never moved. */
  readonly hereSinceUtcMs: number | null;
}

interface Move {
  readonly spotId: SpotId;
  readonly fromUtcMs: number;
  readonly toUtcMs: number;
}

type Openness = Pick<Spot, "kind" | "skyFrac" | "sunFrac" | "rainFrac">;

/**
 * Where each pot belongs. It begins at its first spot. A move to a spot in the open that is at least as open makes that
 * its own at once; one to a more sheltered spot only after two weeks, as a shower is sat out in less; a roof or a room
 * never does, so that a pot that winters indoors is asked out again.
 * @param journal corrections and undos already carried out, in order of time
 */
export function homeSpots(input: {
  pots: readonly Pot[];
  spots: ReadonlyMap<SpotId, Openness>;
  journal: readonly JournalEntry[];
  nowUtcMs: number;
}): Map<PotId, HomeSpot> {
  const moves = movesByPot(input);
  return new Map(
    input.pots.map((pot) => {
      const own = moves.get(pot.id) ?? [];
      const home = own.reduce(
        (homeId, move) => (becomesHome(move, input.spots, homeId) ? move.spotId : homeId),
        pot.firstSpotId,
      );
      return [pot.id, { homeId: home, hereSinceUtcMs: own.at(-1)?.fromUtcMs ?? null }];
    }),
  );
}

function becomesHome(move: Move, spots: ReadonlyMap<SpotId, Openness>, homeId: SpotId): boolean {
  const to = spots.get(move.spotId)!;
  if (to.kind === "roofed" || to.kind === "indoors") return false;
  const home = spots.get(homeId);
  if (home === undefined || openness(to) >= openness(home)) return true;
  return move.toUtcMs - move.fromUtcMs >= SETTLED_DAYS * DAY_MS;
}

function openness({ kind, skyFrac, sunFrac, rainFrac }: Openness): number {
  return kind === "open" || kind === "roof-edge" ? skyFrac + sunFrac + rainFrac : 0;
}

function movesByPot(input: Parameters<typeof homeSpots>[0]): Map<PotId, Move[]> {
  const moves = new Map<PotId, Move[]>();
  for (const { potId, atUtcMs, body } of input.journal) {
    if (body.kind !== "moved" || potId === undefined || atUtcMs > input.nowUtcMs) continue;
    if (!input.spots.has(body.toSpotId)) continue;
    const own = moves.get(potId) ?? [];
    const last = own.at(-1);
    if (last !== undefined) own[own.length - 1] = { ...last, toUtcMs: atUtcMs };
    own.push({ spotId: body.toSpotId, fromUtcMs: atUtcMs, toUtcMs: input.nowUtcMs });
    moves.set(potId, own);
  }
  return moves;
}
