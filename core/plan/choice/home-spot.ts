import type { JournalEntry } from "../../journal/entry.ts";
import type { Pot, PotId } from "../../pot/pot.ts";
import type { Spot, SpotId } from "../../site/spot.ts";

/**
 * Where each pot belongs: the last spot in the open (or at a roof edge) where it stood; for a pot that never stood
 * in the open, where it stands now. A pot carried under cover keeps the place it came from.
 * @param journal corrections and undos already carried out, in order of time
 */
export function homeSpots(input: {
  pots: readonly Pot[];
  spots: ReadonlyMap<SpotId, Pick<Spot, "kind">>;
  journal: readonly JournalEntry[];
  nowUtcMs: number;
}): Map<PotId, SpotId> {
  const { spots } = input;
  const isOpen = (id: SpotId) => ["open", "roof-edge"].includes(spots.get(id)?.kind ?? "");
  const last = new Map<PotId, SpotId>();
  const home = new Map<PotId, SpotId>();
  const stand = (potId: PotId, spotId: SpotId) => {
    last.set(potId, spotId);
    if (isOpen(spotId)) home.set(potId, spotId);
  };
  for (const pot of input.pots) stand(pot.id, pot.firstSpotId);
  for (const entry of input.journal) {
    if (entry.body.kind !== "moved" || entry.potId === undefined || entry.atUtcMs > input.nowUtcMs) continue;
    if (spots.has(entry.body.toSpotId)) stand(entry.potId, entry.body.toSpotId);
  }
  return new Map([...last].map(([potId, spotId]) => [potId, home.get(potId) ?? spotId]));
}
