import type { SpotId } from "../../site/spot.ts";
import { pack } from "./pack.ts";

/** One way of placing a pot. */
export interface RoomOption {
  readonly cost: number;
  /** The spot whose room it takes; null when it takes none. */
  readonly spotId: SpotId | null;
  /** Carries of today that it takes. */
  readonly tripsToday: number;
}

/** One pot that wants room or a carry: what it costs with neither, and its ways with either. */
export interface RoomWish {
  readonly id: string;
  readonly places: number;
  readonly areaCm2: number;
  readonly costWithout: number;
  /** Each costs less than `costWithout`. */
  readonly options: readonly RoomOption[];
}

/** Room left at a spot; what is not told is no limit. */
export interface RoomLeft {
  readonly places?: number;
  readonly areaCm2?: number;
}

export interface RoomGiven {
  /** Index of the option of each pot that got one. */
  readonly optionOf: ReadonlyMap<string, number>;
  /** Harm and trouble saved, and the most that any other sharing could save. */
  readonly saved: number;
  readonly atMost: number;
}

/**
 * Gives limited room, and the limited carries of today, to the pots where they save most. The order of wishes and
 * rooms does not matter.
 */
export function giveRoom(
  wishes: readonly RoomWish[],
  limits: { rooms: ReadonlyMap<SpotId, RoomLeft>; tripsToday?: number },
): RoomGiven {
  const stock = stockOf(limits);
  const ordered = [...wishes].sort((a, b) => (a.id < b.id ? -1 : 1));
  const items = ordered.map((wish) => ({
    id: wish.id,
    options: wish.options.map((option) => ({
      gain: wish.costWithout - option.cost,
      uses: amountsOf(wish, option).flatMap(({ key, amount }) => {
        const resource = stock.indexOf.get(key);
        return resource === undefined || amount === 0 ? [] : [{ resource, amount }];
      }),
    })),
  }));
  const { choices, gain, bound } = pack(items, stock.capacities);
  const optionOf = new Map<string, number>();
  for (const [i, choice] of choices.entries()) if (choice >= 0) optionOf.set(items[i]!.id, choice);
  return { optionOf, saved: gain, atMost: bound };
}

const TRIPS = "trips today";

function stockOf(limits: Parameters<typeof giveRoom>[1]) {
  const indexOf = new Map<string, number>();
  const capacities: number[] = [];
  const add = (key: string, capacity: number | undefined) => {
    if (capacity !== undefined) indexOf.set(key, capacities.push(capacity) - 1);
  };
  for (const [id, { places, areaCm2 }] of [...limits.rooms].sort(([a], [b]) => (a < b ? -1 : 1))) {
    add(`${id} places`, places);
    add(`${id} area`, areaCm2);
  }
  add(TRIPS, limits.tripsToday);
  return { indexOf, capacities };
}

function amountsOf({ places, areaCm2 }: RoomWish, { spotId, tripsToday }: RoomOption) {
  return [
    { key: `${spotId} places`, amount: places },
    { key: `${spotId} area`, amount: areaCm2 },
    { key: TRIPS, amount: tripsToday },
  ];
}
