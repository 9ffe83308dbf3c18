import type { JournalEntry } from "../../journal/entry.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { copyParticles } from "../particles.ts";
import { applyEntry } from "./apply-entry.ts";
import { type PotState, stateAtFirst } from "./pot-state.ts";
import type { ReplayContext } from "./replay-context.ts";
import { runTo } from "./run-to.ts";
import { tankKeeper } from "./tank-keeper.ts";

/** A pot's history run to an instant, from the beginning or from a checkpoint. */
export function replay(
  to: { events: readonly JournalEntry[]; untilUtcMs: number; from?: PotState },
  context: ReplayContext,
): PotState {
  const firstUtcMs = to.events[0]?.atUtcMs ?? to.untilUtcMs;
  let state =
    to.from === undefined
      ? stateAtFirst({ spotId: context.pot.firstSpotId, atUtcMs: wholeHour(firstUtcMs) })
      : reopened(to.from);
  const by = { context, keeper: tankKeeper(context) };
  for (const entry of to.events) {
    state = applyEntry(runTo(state, wholeHour(entry.atUtcMs), by), entry, by);
  }
  return runTo(state, wholeHour(to.untilUtcMs), by);
}

/** A checkpoint's own copy, so that running on leaves the checkpoint as it was. */
function reopened(from: PotState): PotState {
  return { ...from, particles: from.particles === null ? null : copyParticles(from.particles) };
}

function wholeHour(utcMs: number): number {
  return Math.floor(utcMs / HOUR_MS) * HOUR_MS;
}
