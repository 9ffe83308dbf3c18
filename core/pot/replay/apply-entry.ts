import type { EntryBody, JournalEntry } from "../../journal/entry.ts";
import { mixInVessel } from "../../mix/mix-in-vessel.ts";
import { careFrom, soaked } from "../../plant/aftercare.ts";
import { dryDays } from "../../plant/care-days.ts";
import { plantMassKg } from "../../plant/plant-mass.ts";
import type { Problem } from "../../problem.ts";
import { soakIn } from "../balance/take-in.ts";
import { tankOf } from "../balance/tank-of.ts";
import { drawParticles, drawRepotted } from "../learn/draw-particles.ts";
import { observeFeel, observeMass, observePour } from "../learn/observe.ts";
import type { Observed } from "../learn/observed.ts";
import { setPlantedWetness } from "../learn/wetness.ts";
import { copyParticles } from "../particles.ts";
import { mixDepthCm } from "../vessel-shape.ts";
import { wetAboveFrac } from "../wet-above.ts";
import type { PotState } from "./pot-state.ts";
import { type ReplayContext, tankPlanOfState } from "./replay-context.ts";
import { withRest } from "./run-to.ts";
import { seedFor } from "./seed-for.ts";

/** Poured amounts from this share of capacity count as a soaking. Chosen by us. */
const SOAKING_FRAC = 0.1;

type BodyOf<Kind extends EntryBody["kind"]> = Extract<EntryBody, { kind: Kind }>;

/** The state after one entry of the pot's history. */
export function applyEntry(state: PotState, entry: JournalEntry, context: ReplayContext): PotState {
  const { body, atUtcMs } = entry;
  switch (body.kind) {
    case "planted":
      return withRest(planted(state, { ...entry, body }, context), context);
    case "moved":
      return { ...state, spotId: body.toSpotId };
    case "watered":
      return watered(state, { ...entry, body }, context);
    case "weighed":
      return observed(state, entry, context, (on) => observeMass(on, body.massKg));
    case "checked":
      return observed(state, entry, context, (on) => observeFeel(on, body));
    case "leaf":
      return withRest({ ...state, leaf: { state: body.state, atUtcMs } }, context);
    case "pruned":
      return { ...state, prunedUtcMs: atUtcMs };
    default:
      return state;
  }
}

function planted(
  state: PotState,
  entry: JournalEntry & { body: BodyOf<"planted"> },
  context: ReplayContext,
): PotState {
  const { vessel, mixId, roots, mixWet } = entry.body;
  const mix = context.mixes.get(mixId);
  if (mix === undefined) throw new RangeError(`mix ${mixId} is not known`);
  const outcome = mixInVessel({ mix, vessel, components: context.components });
  if (!outcome.ok) {
    const problems = outcome.problems.map((problem) => ({
      ...problem,
      path: ["journal", entry.id, ...problem.path],
    }));
    return { ...state, doubts: [...state.doubts, ...problems] };
  }
  const inVessel = outcome.value;
  const { leafy } = context.values;
  const wet =
    mixWet ?? (leafy ? "watered-in" : roots === "undisturbed" || roots === "teased" ? "moist" : "dry");
  const needDays = dryDays({ roots, leafy }, [context.pot.dryDays, context.settings.dryDays]);
  const wateredIn = mixWet === "watered-in";
  const seed = seedFor(context, entry.id);
  const draw = { seed, inVessel, plantMassKg: plantMassKg(context.pot, context.values) };
  const sameWall = state.planting?.vessel.material === vessel.material;
  const particles =
    state.particles === null
      ? drawParticles({ ...draw, size: context.settings.cloudSize })
      : drawRepotted(state.particles, { ...draw, sameWall });
  const care = careFrom({ plantedUtcMs: entry.atUtcMs, roots, leafy, needDays, wateredIn });
  const planting = {
    plantedUtcMs: entry.atUtcMs,
    vessel,
    mixId,
    roots,
    inVessel,
    wetAboveFrac: wetAboveFrac(inVessel, vessel),
  };
  const next = { ...state, planting, particles, care, blindHours: 0, rootsShareFrac: 1 };
  setPlantedWetness(tankOf(tankPlanOfState(next, context), particles), { mixWet: wet, seed: seed + 1 });
  return { ...next, lastWateredUtcMs: wateredIn ? entry.atUtcMs : state.lastWateredUtcMs };
}

function watered(
  state: PotState,
  entry: JournalEntry & { body: BodyOf<"watered"> },
  context: ReplayContext,
): PotState {
  const { given } = entry.body;
  const seen =
    given.kind === "poured-drained" ? observed(state, entry, context, (on) => observePour(on, given)) : state;
  if (seen.planting === null || seen.particles === null) return seen;
  const particles = copyParticles(seen.particles);
  const tank = tankOf(tankPlanOfState(seen, context), particles);
  const full = given.kind === "ran-through" || (given.kind === "poured-drained" && given.drainedMl > 0);
  const pouredMl =
    given.kind === "measured" ? given.waterMl : given.kind === "poured-drained" ? given.pouredMl : 0;
  for (let k = 0; k < particles.size; k++) {
    soakIn({ tank, particle: k, waterMl: full ? Number.POSITIVE_INFINITY : pouredMl });
  }
  const capacityMl = seen.planting.inVessel.hold.capacityMl;
  const soaks = full || pouredMl >= SOAKING_FRAC * capacityMl;
  const care = soaks && seen.care !== null ? soaked(seen.care, entry.atUtcMs) : seen.care;
  return { ...seen, particles, care, lastWateredUtcMs: entry.atUtcMs };
}

function observed(
  state: PotState,
  entry: JournalEntry,
  context: ReplayContext,
  observe: (on: Observed) => Problem | null,
): PotState {
  if (state.planting === null || state.particles === null) return state;
  const particles = copyParticles(state.particles);
  const { inVessel, vessel } = state.planting;
  const doubt = observe({
    particles,
    tank: tankOf(tankPlanOfState(state, context), particles),
    inVessel,
    depthCm: mixDepthCm(vessel),
    seed: seedFor(context, entry.id),
    entry,
  });
  return { ...state, particles, doubts: doubt === null ? state.doubts : [...state.doubts, doubt] };
}
