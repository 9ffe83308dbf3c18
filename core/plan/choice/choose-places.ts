import type { PotId } from "../../pot/pot.ts";
import type { SpotId } from "../../site/spot.ts";
import type { PlanContext } from "../plan-context.ts";
import { giveRoom, type RoomLeft, type RoomWish } from "../room/give-room.ts";
import type { CarryOption } from "./carry-options.ts";
import type { PotStudy } from "./pot-study.ts";

/** What was settled for one pot: the way it goes, and the one it would have gone with room for all. */
export interface Place {
  readonly chosen: CarryOption | null;
  readonly wished: CarryOption | null;
}

/** Whether a pot would go under cover if there were room. */
export function lacksRoom({ chosen, wished }: Place): boolean {
  return wished !== null && chosen !== null && usesRoom(wished) && !usesRoom(chosen);
}

/** Settles every pot's days, room under cover going where it saves most. */
export function choosePlaces(context: PlanContext, studies: readonly PotStudy[]): Map<PotId, Place> {
  const asking = studies.filter(({ options }) => options.length > 0);
  const { spotOf: given } = giveRoom(asking.flatMap(wishOf), roomsLeft(context, studies));
  return new Map(
    studies.map((study) => {
      const potId = study.now.pot.id;
      const free = cheapest(study.options.filter((option) => !usesRoom(option)));
      const spotId = given.get(potId);
      const inRoom = cheapest(
        study.options.filter((option) => usesRoom(option) && option.away.spot.id === spotId),
      );
      return [potId, { chosen: inRoom ?? free, wished: cheapest(study.options) }];
    }),
  );
}

/** An option takes a place as soon as the pot spends a day away; a pot on its way home does not. */
function usesRoom({ days }: CarryOption): boolean {
  return days.includes(true);
}

function cheapest(options: readonly CarryOption[]): CarryOption | null {
  let best: CarryOption | null = null;
  for (const option of options) if (best === null || option.cost < best.cost) best = option;
  return best;
}

/** Cost of leaving a pot without the place it cannot be carried from: more than any harm. */
const CANNOT_LEAVE = 1000;

function wishOf(study: PotStudy): RoomWish[] {
  const { pot, vessel } = study.now;
  const count = pot.count ?? 1;
  const free = cheapest(study.options.filter((option) => !usesRoom(option)));
  const costWithout = free?.cost ?? CANNOT_LEAVE;
  const costAt = new Map<SpotId, number>();
  for (const option of study.options) {
    const id = option.away.spot.id;
    if (!usesRoom(option) || option.cost >= Math.min(costWithout, costAt.get(id) ?? costWithout)) continue;
    costAt.set(id, option.cost);
  }
  if (costAt.size === 0) return [];
  return [
    {
      id: pot.id,
      places: count,
      areaCm2: count * vessel.topCm ** 2,
      costWithout: costWithout * count,
      costAt: new Map([...costAt].map(([id, cost]) => [id, cost * count])),
    },
  ];
}

/** Room at each spot beside the pots that belong there and stay. */
export function roomsLeft(
  { collection }: Pick<PlanContext, "collection">,
  studies: readonly PotStudy[],
): Map<SpotId, RoomLeft> {
  const left = new Map<SpotId, RoomLeft>();
  for (const { id, room } of collection.spots) {
    if (room?.places === undefined && room?.areaCm2 === undefined) continue;
    const settled = studies.filter((study) => study.here.at.spot.id === id && study.home === study.here);
    const count = settled.reduce((sum, { now }) => sum + (now.pot.count ?? 1), 0);
    const areaCm2 = settled.reduce((sum, { now }) => sum + (now.pot.count ?? 1) * now.vessel.topCm ** 2, 0);
    left.set(id, {
      ...(room.places === undefined ? {} : { places: Math.max(0, room.places - count) }),
      ...(room.areaCm2 === undefined ? {} : { areaCm2: Math.max(0, room.areaCm2 - areaCm2) }),
    });
  }
  return left;
}
