import type { JournalEntry } from "../../journal/entry.ts";
import type { Problem } from "../../problem.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { Observed } from "../learn/observed.ts";
import { mixDepthCm } from "../vessel-shape.ts";
import type { Applying } from "./applying.ts";
import { fadedTo } from "./faded-to.ts";
import type { PotState } from "./pot-state.ts";
import { seedFor } from "./seed-for.ts";

/** A doubted observation fades what was learned as much as this many days do. Chosen by us. */
const SHAKEN_DAYS = 60;
const DAY_MS = 24 * HOUR_MS;

/** The state after an observation was held against the cloud; one that does not fit is kept as a doubt. */
export function observed(
  state: PotState,
  entry: JournalEntry,
  { context, keeper }: Applying,
  observe: (on: Observed) => Problem | null,
): PotState {
  if (state.planting === null || state.particles === null) return state;
  const { inVessel, vessel } = state.planting;
  const faded = fadedTo(state, entry.atUtcMs, context);
  keeper.forget();
  const doubt = observe({
    particles: state.particles,
    // Built only for what asks for it: most observations read the particles alone.
    get tank() {
      return keeper.tankFor(faded);
    },
    inVessel,
    depthCm: mixDepthCm(vessel),
    seed: seedFor(context, entry.id),
    entry,
  });
  keeper.forget();
  if (doubt === null) return faded;
  // What cannot be explained shakes what was believed: the next observation of its kind will be heard.
  const shaken = fadedTo(faded, faded.fadedUtcMs + SHAKEN_DAYS * DAY_MS, context);
  return { ...shaken, fadedUtcMs: faded.fadedUtcMs, doubts: [...state.doubts, doubt] };
}
