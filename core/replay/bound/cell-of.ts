import type { WorldPot } from "../world/world-pot.ts";
import type { WorldState } from "../world/world-state.ts";

/** How finely states are told apart; 1 is the usual, 2 has cells half as wide in every direction. */
export interface Fineness {
  readonly fineness: number;
}

/** Cells at fineness 1: of the usable water, of the difference between the layers, of stretches of dry, wet and cold time. */
const WATER_CELLS = 12;
const LAYER_CELLS = 3;
const DRY_CELLS_PER_STRETCH = 3;
const WET_CELLS_PER_STRETCH = 2;
const COLD_NIGHTS_PER_CELL = 1.5;
const HEALING_CELLS = 3;
const WORST_CELLS = 3;
/** What lies beyond so many stretches or nights is one cell. */
const MOST = 15;

/**
 * The cell of a state: spot, cover, content of either layer, how long dry, wet and cold it has been, and how far its cut has
 * closed. States of one cell are taken for one; the cheapest stands for all, exactly as it is.
 */
export function cellOf(
  pot: WorldPot,
  state: WorldState,
  { fineness, isShielded }: Fineness & { isShielded: boolean },
): number {
  const { values } = pot.known;
  const usable = (state.upperMl + state.lowerMl - pot.unusableMl) / pot.usableMl;
  const layers = state.upperMl / pot.upperFullMl - state.lowerMl / pot.lowerFullMl + 1;
  const parts: readonly (readonly [value: number, most: number])[] = [
    [state.spot, 7],
    [isShielded ? 1 : 0, 1],
    [(Math.max(-0.5, usable) + 0.5) * WATER_CELLS * fineness, 32 * fineness],
    [layers * LAYER_CELLS * fineness, 8 * fineness],
    [state.droughtShare * DRY_CELLS_PER_STRETCH * fineness, MOST * fineness],
    [(state.wetHours / values.wetBaseHours) * WET_CELLS_PER_STRETCH * fineness, MOST * fineness],
    [(state.coldNights / COLD_NIGHTS_PER_CELL) * fineness, MOST * fineness],
    [
      state.closed ? 0 : 1 + (state.healedDays / state.needDays) * HEALING_CELLS * fineness,
      2 + HEALING_CELLS * fineness,
    ],
    [state.closed ? 0 : (state.worstWetting / 0.3) * WORST_CELLS * fineness, 2 + WORST_CELLS * fineness],
  ];
  let key = 0;
  for (const [value, most] of parts) key = key * (most + 1) + Math.min(most, Math.floor(value));
  return key;
}
