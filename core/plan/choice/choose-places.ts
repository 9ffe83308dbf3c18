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

/** Settles every pot's days, room under cover and carries before work going where they save most. */
export function choosePlaces(context: PlanContext, studies: readonly PotStudy[]): Map<PotId, Place> {
  const asking = studies.filter(({ options }) => options.length > 0);
  const { tripsBeforeWork } = context.settings;
  const ways = new Map(asking.map((study) => [study.now.pot.id, waysOf(study)]));
  const { optionOf } = giveRoom(
    asking.flatMap((study) => wishOf(study, ways.get(study.now.pot.id)!)),
    {
      rooms: roomsLeft(context, studies),
      ...(tripsBeforeWork === undefined ? {} : { tripsToday: tripsBeforeWork }),
    },
  );
  return new Map(
    studies.map((study) => {
      const potId = study.now.pot.id;
      const own = ways.get(potId);
      const given = own?.limited[optionOf.get(potId) ?? -1];
      return [potId, { chosen: given ?? own?.free ?? null, wished: cheapest(study.options) }];
    }),
  );
}

/** The ways of one pot: the best that takes neither room nor a carry of today, and those that take either and are better. */
interface Ways {
  readonly free: CarryOption | null;
  readonly limited: readonly CarryOption[];
}

function waysOf({ options, home, here }: PotStudy): Ways {
  const startsAway = here !== home;
  const isFree = (option: CarryOption) => !usesRoom(option) && tripsToday(option, startsAway) === 0;
  const free = cheapest(options.filter(isFree));
  const groups = new Map<string, CarryOption>();
  for (const option of options) {
    if (isFree(option) || (free !== null && option.cost >= free.cost)) continue;
    const key = `${usesRoom(option) ? option.away.spot.id : ""} ${tripsToday(option, startsAway)}`;
    const best = groups.get(key);
    if (best === undefined || option.cost < best.cost) groups.set(key, option);
  }
  return { free, limited: [...groups].sort(([a], [b]) => (a < b ? -1 : 1)).map(([, option]) => option) };
}

/** An option takes a place as soon as the pot spends a day away; a pot on its way home does not. */
function usesRoom({ days }: CarryOption): boolean {
  return days.includes(true);
}

function tripsToday({ days }: CarryOption, startsAway: boolean): number {
  return days[0] === startsAway ? 0 : 1;
}

function cheapest(options: readonly CarryOption[]): CarryOption | null {
  let best: CarryOption | null = null;
  for (const option of options) if (best === null || option.cost < best.cost) best = option;
  return best;
}

/** Cost of leaving a pot without the place it cannot be carried from: more than any harm. */
const CANNOT_LEAVE = 1000;

function wishOf(study: PotStudy, { free, limited }: Ways): RoomWish[] {
  if (limited.length === 0) return [];
  const { pot, vessel } = study.now;
  const count = pot.count ?? 1;
  const startsAway = study.here !== study.home;
  return [
    {
      id: pot.id,
      places: count,
      areaCm2: count * vessel.topCm ** 2,
      costWithout: (free?.cost ?? CANNOT_LEAVE) * count,
      options: limited.map((option) => ({
        cost: option.cost * count,
        spotId: usesRoom(option) ? option.away.spot.id : null,
        tripsToday: tripsToday(option, startsAway) * count,
      })),
    },
  ];
}

/** Room at each spot beside the pots that belong there and stay: guests of today ask anew with all others. */
function roomsLeft(
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
