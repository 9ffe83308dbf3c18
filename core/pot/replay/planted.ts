import type { RootWork } from "../../journal/entry.ts";
import type { Mix } from "../../mix/mix.ts";
import { inVesselOf, type MixInVessel } from "../../mix/mix-in-vessel.ts";
import { type WorkedMix, workedMix } from "../../mix/worked-mix.ts";
import { careFrom } from "../../plant/aftercare.ts";
import { dryDays } from "../../plant/care-days.ts";
import { plantMassKg } from "../../plant/plant-mass.ts";
import type { Outcome } from "../../problem.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { drawParticles, drawRepotted } from "../learn/draw-particles.ts";
import { setPlantedWetness } from "../learn/wetness.ts";
import type { Particles } from "../particles.ts";
import type { Vessel } from "../vessel.ts";
import { wetAboveFrac } from "../wet-above.ts";
import type { Applying, EntryOf } from "./applying.ts";
import { fadedTo } from "./faded-to.ts";
import type { Planting, PotState } from "./pot-state.ts";
import type { ReplayContext } from "./replay-context.ts";
import { seedFor } from "./seed-for.ts";

/** The state after planting or repotting; a mix or vessel that cannot be is told and changes nothing. */
export function planted(state: PotState, entry: EntryOf<"planted">, by: Applying): PotState {
  const { context } = by;
  const { vessel, mixId } = entry.body;
  const mix = context.mixes.get(mixId);
  if (mix === undefined) throw new RangeError(`mix ${mixId} is not known`);
  const outcome = heldBy(mix, vessel, context.components);
  if (outcome.ok) return plantedIn(fadedTo(state, entry.atUtcMs, context), entry, outcome.value, by);
  const problems = outcome.problems.map((problem) => ({
    ...problem,
    path: ["journal", entry.id, ...problem.path],
  }));
  return { ...state, doubts: [...state.doubts, ...problems] };
}

/**
 * A planting written down later than this is that of a pot which somebody has been watering without a word of it.
 * Chosen by us: two weeks back a grower still tells the waterings along.
 */
const REMEMBERED_MS = 14 * 24 * HOUR_MS;

/** The whole hour at which a pot's record begins; null where that is its planting. */
function recordFrom({ atUtcMs, recordedUtcMs }: EntryOf<"planted">): number | null {
  if (recordedUtcMs - atUtcMs <= REMEMBERED_MS) return null;
  return Math.floor(recordedUtcMs / HOUR_MS) * HOUR_MS;
}

type Held = Pick<Planting, "inVessel" | "wetAboveFrac">;

/** What was worked out for a mix, by vessel: on a bench many pots are alike. */
const KNOWN = new WeakMap<
  Mix,
  { components: object; worked: Outcome<WorkedMix>; byVessel: Map<string, Outcome<Held>> }
>();

function heldBy(mix: Mix, vessel: Vessel, components: ReplayContext["components"]): Outcome<Held> {
  let known = KNOWN.get(mix);
  if (known?.components !== components) {
    known = { components, worked: workedMix(mix, components), byVessel: new Map() };
    KNOWN.set(mix, known);
  }
  const key = JSON.stringify(vessel);
  const found = known.byVessel.get(key) ?? workedOut(known.worked, vessel);
  known.byVessel.set(key, found);
  return found;
}

function workedOut(worked: Outcome<WorkedMix>, vessel: Vessel): Outcome<Held> {
  const outcome = inVesselOf(worked, vessel);
  if (!outcome.ok) return outcome;
  const inVessel = outcome.value;
  return { ok: true, value: { inVessel, wetAboveFrac: wetAboveFrac(inVessel, vessel) } };
}

function plantedIn(
  state: PotState,
  entry: EntryOf<"planted">,
  { inVessel, wetAboveFrac }: Held,
  { context, keeper }: Applying,
): PotState {
  const { atUtcMs, body } = entry;
  const { vessel, mixId, roots, mixWet } = body;
  const { leafy } = context.values;
  const needDays = dryDays({ roots, leafy }, [context.pot.dryDays, context.settings.dryDays]);
  const wateredIn = mixWet === "watered-in";
  const next = {
    ...state,
    planting: {
      plantedUtcMs: atUtcMs,
      vessel,
      mixId,
      roots,
      inVessel,
      wetAboveFrac,
    },
    particles: drawn(state, entry, inVessel, context),
    care: careFrom({ plantedUtcMs: atUtcMs, roots, leafy, needDays, wateredIn }),
    careOver: false,
    blindHours: 0,
    recordFromUtcMs: recordFrom(entry),
    rootsShareFrac: 1,
    fadedUtcMs: atUtcMs,
    lastWateredUtcMs: wateredIn ? atUtcMs : state.lastWateredUtcMs,
  };
  setPlantedWetness(keeper.tankFor(next), {
    mixWet: mixWet ?? usualWetness(roots, leafy),
    seed: seedFor(context, entry.id) + 1,
  });
  return next;
}

function drawn(
  state: PotState,
  entry: EntryOf<"planted">,
  inVessel: MixInVessel,
  context: ReplayContext,
): Particles {
  const draw = {
    seed: seedFor(context, entry.id),
    inVessel,
    plantMassKg: plantMassKg(context.pot, context.values),
  };
  if (state.particles === null) return drawParticles({ ...draw, size: context.settings.cloudSize });
  const sameWall = state.planting?.vessel.material === entry.body.vessel.material;
  return drawRepotted(state.particles, { ...draw, sameWall });
}

/** Where the grower does not say: cut roots of plants that store water go into dry mix. Common practice. */
function usualWetness(roots: RootWork, leafy: boolean): "dry" | "moist" {
  return leafy || roots === "undisturbed" || roots === "teased" ? "moist" : "dry";
}
