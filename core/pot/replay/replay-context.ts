import type { Component } from "../../mix/component.ts";
import type { Mix, MixId } from "../../mix/mix.ts";
import type { Settings } from "../../plan/settings.ts";
import type { GroupValues } from "../../plant/group.ts";
import type { SpotForcing } from "../../site/forcing.ts";
import type { SpotId } from "../../site/spot.ts";
import type { TankPlan } from "../balance/tank-of.ts";
import type { Pot } from "../pot.ts";
import type { PotState } from "./pot-state.ts";

/** What stays the same through one pot's replay. */
export interface ReplayContext {
  readonly pot: Pot;
  readonly values: GroupValues;
  readonly latDeg: number;
  readonly settings: Settings;
  readonly mixes: ReadonlyMap<MixId, Mix>;
  readonly components: ReadonlyMap<string, Component>;
  readonly past: ReadonlyMap<SpotId, SpotForcing>;
}

/** The balance's view of a planted state. */
export function tankPlanOfState(state: PotState, context: ReplayContext): TankPlan {
  const { planting } = state;
  if (planting === null) throw new RangeError("the pot is not planted");
  return {
    inVessel: planting.inVessel,
    vessel: planting.vessel,
    wetAboveFrac: planting.wetAboveFrac,
    values: context.values,
    canopyWidthCm: context.pot.canopyWidthCm,
    restingShareFrac: state.rest.restingShareFrac,
    rootsShareFrac: state.rootsShareFrac * state.shootsShareFrac,
  };
}
