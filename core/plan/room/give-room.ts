import type { SpotId } from "../../site/spot.ts";
import { pack } from "./pack.ts";
import type { PackOption } from "./packing.ts";

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

export interface RoomGiven {
  /** The spot of each pot that got one. */
  readonly spotOf: ReadonlyMap<string, SpotId>;
  /** Harm and trouble saved, and the most that any other sharing could save. */
  readonly saved: number;
  readonly atMost: number;
}

/** Gives limited room to the pots where it saves most. The order of wishes and rooms does not matter. */
export function giveRoom(wishes: readonly RoomWish[], rooms: ReadonlyMap<SpotId, RoomLeft>): RoomGiven {
  const resources: { key: string; capacity: number }[] = [];
  for (const [id, { places, areaCm2 }] of [...rooms].sort(([a], [b]) => (a < b ? -1 : 1))) {
    if (places !== undefined) resources.push({ key: `${id} places`, capacity: places });
    if (areaCm2 !== undefined) resources.push({ key: `${id} area`, capacity: areaCm2 });
  }
  const indexOf = new Map(resources.map(({ key }, index) => [key, index]));
  const usesAt = (spotId: SpotId, { places, areaCm2 }: RoomWish): PackOption["uses"] =>
    [
      { resource: indexOf.get(`${spotId} places`), amount: places },
      { resource: indexOf.get(`${spotId} area`), amount: areaCm2 },
    ].flatMap(({ resource, amount }) => (resource === undefined ? [] : [{ resource, amount }]));
  const ordered = [...wishes].sort((a, b) => (a.id < b.id ? -1 : 1));
  const offers = ordered.map((wish) => {
    const spots = [...wish.costAt].sort(([a], [b]) => (a < b ? -1 : 1));
    return {
      id: wish.id,
      spotIds: spots.map(([spotId]) => spotId),
      options: spots.map(([spotId, cost]) => ({ gain: wish.costWithout - cost, uses: usesAt(spotId, wish) })),
    };
  });
  const { choices, gain, bound } = pack(
    offers,
    resources.map(({ capacity }) => capacity),
  );
  const spotOf = new Map<string, SpotId>();
  for (const [i, choice] of choices.entries()) {
    if (choice >= 0) spotOf.set(offers[i]!.id, offers[i]!.spotIds[choice]!);
  }
  return { spotOf, saved: gain, atMost: bound };
}
