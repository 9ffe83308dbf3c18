import type { SpotId } from "../../site/spot.ts";

/** One pot that wants room: what it costs with none, and with a place at each spot that would help. */
export interface RoomWish {
  readonly id: string;
  readonly places: number;
  readonly areaCm2: number;
  /** Cost with no place under cover. */
  readonly costWithout: number;
  /** Cost with a place there, always below `costWithout`. */
  readonly costAt: ReadonlyMap<SpotId, number>;
}

/** Room left at a spot; what is not told is no limit. */
export interface RoomLeft {
  readonly places?: number;
  readonly areaCm2?: number;
}

/** Gives limited room to the pots where it saves most. @returns the spot of each pot that got one */
export function giveRoom(
  wishes: readonly RoomWish[],
  rooms: ReadonlyMap<SpotId, RoomLeft>,
): Map<string, SpotId> {
  const left = new Map(
    [...rooms].map(([id, room]) => [id, { places: Infinity, areaCm2: Infinity, ...room }]),
  );
  const given = new Map<string, SpotId>();
  const offers = wishes
    .flatMap((wish) =>
      [...wish.costAt].map(([spotId, cost]) => ({ wish, spotId, gain: wish.costWithout - cost })),
    )
    .sort((a, b) => b.gain - a.gain || (a.wish.id + a.spotId < b.wish.id + b.spotId ? -1 : 1));
  for (const { wish, spotId } of offers) {
    const room = left.get(spotId);
    if (given.has(wish.id)) continue;
    if (room !== undefined) {
      if (room.places < wish.places || room.areaCm2 < wish.areaCm2) continue;
      room.places -= wish.places;
      room.areaCm2 -= wish.areaCm2;
    }
    given.set(wish.id, spotId);
  }
  return given;
}
