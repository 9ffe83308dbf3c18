import type { Tank } from "../balance/tank.ts";
import { setThirst, tankOf } from "../balance/tank-of.ts";
import type { PotState } from "./pot-state.ts";
import { type ReplayContext, tankPlanOfState } from "./replay-context.ts";

/** Holds the tank of a replay as long as nothing that it was made from has changed. */
export interface TankKeeper {
  tankFor(state: PotState): Tank;
  /** To be called when the particles' factors were changed in place. */
  forget(): void;
}

export function tankKeeper(context: ReplayContext): TankKeeper {
  let kept: { readonly tank: Tank; readonly state: PotState } | null = null;
  let spare: Tank | null = null;
  return {
    tankFor(state) {
      const before = kept;
      if (before !== null && !needsAnother(before.state, state)) return before.tank;
      const plan = tankPlanOfState(state, context);
      const particles = state.particles!;
      const sameButThirst =
        before !== null && before.state.planting === state.planting && before.state.particles === particles;
      if (sameButThirst) setThirst(before.tank, plan, particles);
      const tank = sameButThirst ? before.tank : tankOf(plan, particles, null, before?.tank ?? spare);
      kept = { tank, state };
      return tank;
    },
    forget() {
      spare = kept?.tank ?? spare;
      kept = null;
    },
  };
}

/** Whether two states of one pot differ in what a tank is made from. */
export function needsAnother(before: PotState, after: PotState): boolean {
  return (
    before.planting !== after.planting ||
    before.particles !== after.particles ||
    before.rest.restingShareFrac !== after.rest.restingShareFrac ||
    before.rootsShareFrac !== after.rootsShareFrac ||
    before.shootsShareFrac !== after.shootsShareFrac
  );
}
