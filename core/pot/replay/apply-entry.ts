import type { JournalEntry } from "../../journal/entry.ts";
import { observeFeel, observeMass } from "../learn/observe.ts";
import type { Applying } from "./applying.ts";
import { withRest } from "./live.ts";
import { observed } from "./observed.ts";
import { planted } from "./planted.ts";
import type { PotState } from "./pot-state.ts";
import { watered } from "./watered.ts";

/** The state after one entry of the pot's history. Changes the state's particles in place. */
export function applyEntry(state: PotState, entry: JournalEntry, by: Applying): PotState {
  const { body, atUtcMs } = entry;
  switch (body.kind) {
    case "planted":
      return withRest(planted(state, { ...entry, body }, by), by.context);
    case "moved":
      return { ...state, spotId: body.toSpotId };
    case "watered":
      return watered(state, { ...entry, body }, by);
    case "weighed":
      return observed(state, entry, by, (on) => observeMass(on, body.massKg));
    case "checked":
      return observed(state, entry, by, (on) => observeFeel(on, body));
    case "leaf":
      return withRest({ ...state, leaf: { state: body.state, atUtcMs } }, by.context);
    case "pruned":
      return { ...state, prunedUtcMs: atUtcMs };
    default:
      return state;
  }
}
