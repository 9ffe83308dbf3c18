import type { EntryBody, JournalEntry } from "../../journal/entry.ts";
import { observeFeel, observeMass } from "../learn/observe.ts";
import type { Applying } from "./applying.ts";
import { withRest } from "./live.ts";
import { observed } from "./observed.ts";
import { planted } from "./planted.ts";
import type { PotState } from "./pot-state.ts";
import { knownWetness } from "./run-to.ts";
import { watered } from "./watered.ts";

/** The state after one entry of the pot's history. Changes the state's particles in place. */
export function applyEntry(state: PotState, entry: JournalEntry, by: Applying): PotState {
  const { body, atUtcMs } = entry;
  if (isHeard(body)) return heard(recorded(state, by), { ...entry, body }, by);
  switch (body.kind) {
    case "planted":
      return withRest(planted(state, { ...entry, body }, by), by.context);
    case "moved":
      return { ...state, spotId: body.toSpotId };
    case "leaf":
      return withRest({ ...state, leaf: { state: body.state, atUtcMs } }, by.context);
    case "pruned":
      return { ...state, prunedUtcMs: atUtcMs };
    default:
      return state;
  }
}

type Heard = Extract<EntryBody, { kind: "watered" | "weighed" | "checked" }>;

/** Whether an entry says something about the water in the pot. */
function isHeard(body: EntryBody): body is Heard {
  return body.kind === "watered" || body.kind === "weighed" || body.kind === "checked";
}

/** From the first word about its water on the pot's record counts. */
function recorded(state: PotState, { context }: Applying): PotState {
  return { ...state, particles: knownWetness(state, context), blindHours: 0, recordFromUtcMs: null };
}

function heard(state: PotState, entry: JournalEntry & { readonly body: Heard }, by: Applying): PotState {
  const { body } = entry;
  if (body.kind === "watered") return watered(state, { ...entry, body }, by);
  if (body.kind === "weighed") return observed(state, entry, by, (on) => observeMass(on, body.massKg));
  return observed(state, entry, by, (on) => observeFeel(on, body));
}
