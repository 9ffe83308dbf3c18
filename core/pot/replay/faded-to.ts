import { plantMassKg } from "../../plant/plant-mass.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { drawnSpreads } from "../learn/draw-particles.ts";
import { drift } from "../learn/drift.ts";
import type { PotState } from "./pot-state.ts";
import type { ReplayContext } from "./replay-context.ts";

const DAY_MS = 24 * HOUR_MS;

/** The state with what was learned faded up to an instant. Changes the particles in place. */
export function fadedTo(
  state: PotState,
  utcMs: number,
  { pot, values }: Pick<ReplayContext, "pot" | "values">,
): PotState {
  const { particles, planting } = state;
  if (particles === null || planting === null || utcMs <= state.fadedUtcMs) return state;
  const drawn = drawnSpreads({ inVessel: planting.inVessel, plantMassKg: plantMassKg(pot, values) });
  drift(particles, { days: (utcMs - state.fadedUtcMs) / DAY_MS, drawn });
  return { ...state, fadedUtcMs: utcMs };
}
