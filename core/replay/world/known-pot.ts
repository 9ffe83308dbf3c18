import type { RootWork } from "../../journal/entry.ts";
import type { Component } from "../../mix/component.ts";
import { componentsById } from "../../mix/library.ts";
import type { Mix } from "../../mix/mix.ts";
import { type MixInVessel, mixInVessel } from "../../mix/mix-in-vessel.ts";
import type { GroupValues, PlantGroup } from "../../plant/group.ts";
import { groupsById } from "../../plant/groups.ts";
import type { Pot } from "../../pot/pot.ts";
import type { Vessel } from "../../pot/vessel.ts";
import { wetAboveFrac } from "../../pot/wet-above.ts";
import type { Site } from "../../site/site.ts";
import type { Spot } from "../../site/spot.ts";

/** A pot of a replay as its grower describes it. */
export interface StagePot {
  readonly pot: Pot;
  readonly vessel: Vessel;
  readonly mixId: string;
  /** Where it stands in the growing season. */
  readonly homeSpotId: string;
  /** Repotted once in the season, into the same mix and vessel. */
  readonly repot: { readonly month: number; readonly dayOfMonth: number; readonly roots: RootWork } | null;
}

/** Everything that a replay is played on, the weather apart. */
export interface Stage {
  readonly site: Site;
  /** In this order spots are told apart by index. */
  readonly spots: readonly Spot[];
  readonly mixes: readonly Mix[];
  readonly pots: readonly StagePot[];
  /** The grower's own components and groups, beside the library's. */
  readonly ownComponents?: readonly Component[];
  readonly ownGroups?: readonly PlantGroup[];
}

/** What everybody may know of a pot: its description with what follows from it. */
export interface KnownPot extends StagePot {
  readonly values: GroupValues;
  readonly inVessel: MixInVessel;
  readonly wetAboveFrac: number;
  readonly homeSpot: number;
}

/** @throws RangeError for a group, mix, vessel or spot that is not known or cannot be */
export function knownPots(stage: Stage): KnownPot[] {
  const groups = groupsById(stage.ownGroups);
  const components = componentsById(stage.ownComponents);
  return stage.pots.map((one) => {
    const group = groups.get(one.pot.groupId);
    const mix = stage.mixes.find(({ id }) => id === one.mixId);
    const homeSpot = stage.spots.findIndex(({ id }) => id === one.homeSpotId);
    if (group === undefined) throw new RangeError(`group ${one.pot.groupId} is not known`);
    if (mix === undefined) throw new RangeError(`mix ${one.mixId} is not known`);
    if (homeSpot < 0) throw new RangeError(`spot ${one.homeSpotId} is not known`);
    const outcome = mixInVessel({ mix, vessel: one.vessel, components });
    if (!outcome.ok) throw new RangeError(`pot ${one.pot.id}: ${JSON.stringify(outcome.problems)}`);
    return {
      ...one,
      values: { ...group.values, ...one.pot.own },
      inVessel: outcome.value,
      wetAboveFrac: wetAboveFrac(outcome.value, one.vessel),
      homeSpot,
    };
  });
}
