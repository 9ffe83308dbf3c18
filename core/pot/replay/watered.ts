import type { WaterGiven } from "../../journal/entry.ts";
import { soaked } from "../../plant/aftercare.ts";
import { soakIn } from "../balance/take-in.ts";
import { observePour, observeThriving } from "../learn/observe.ts";
import type { Applying, EntryOf } from "./applying.ts";
import { observed } from "./observed.ts";
import type { PotState } from "./pot-state.ts";

/** Poured amounts from this share of capacity count as a soaking. Chosen by us. */
const SOAKING_FRAC = 0.1;

/** The state after a watering: first what it tells about the pot before it, then the water. */
export function watered(state: PotState, entry: EntryOf<"watered">, by: Applying): PotState {
  const { given } = entry.body;
  const seen = beforeWater(state, entry, by);
  if (seen.planting === null || seen.particles === null) return seen;
  const tank = by.keeper.tankFor(seen);
  const waterMl = takenMl(given);
  for (let k = 0; k < tank.size; k++) soakIn({ tank, particle: k, waterMl });
  const soaks = waterMl >= SOAKING_FRAC * seen.planting.inVessel.hold.capacityMl;
  const care = soaks && seen.care !== null ? soaked(seen.care, entry.atUtcMs) : seen.care;
  return { ...seen, care, lastWateredUtcMs: entry.atUtcMs };
}

function beforeWater(state: PotState, entry: EntryOf<"watered">, by: Applying): PotState {
  const { given } = entry.body;
  const poured =
    given.kind === "poured-drained" ? observed(state, entry, by, (on) => observePour(on, given)) : state;
  return by.context.values.leafy ? observed(poured, entry, by, observeThriving) : poured;
}

/** What runs through has filled the pot, however much it was. */
function takenMl(given: WaterGiven): number {
  if (given.kind === "measured") return given.waterMl;
  if (given.kind === "ran-through") return Number.POSITIVE_INFINITY;
  return given.drainedMl > 0 ? Number.POSITIVE_INFINITY : given.pouredMl;
}
