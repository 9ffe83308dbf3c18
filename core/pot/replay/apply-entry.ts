import type { EntryBody, JournalEntry } from "../../journal/entry.ts";
import { mixInVessel } from "../../mix/mix-in-vessel.ts";
import { careFrom, soaked } from "../../plant/aftercare.ts";
import { dryDays } from "../../plant/care-days.ts";
import { plantMassKg } from "../../plant/plant-mass.ts";
import type { Problem } from "../../problem.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { soakIn } from "../balance/take-in.ts";
import { drawParticles, drawRepotted } from "../learn/draw-particles.ts";
import { observeFeel, observeMass, observePour, observeThriving } from "../learn/observe.ts";
import type { Observed } from "../learn/observed.ts";
import { setPlantedWetness } from "../learn/wetness.ts";
import { mixDepthCm } from "../vessel-shape.ts";
import { wetAboveFrac } from "../wet-above.ts";
import { fadedTo } from "./faded-to.ts";
import { withRest } from "./live.ts";
import type { PotState } from "./pot-state.ts";
import type { ReplayContext } from "./replay-context.ts";
import { seedFor } from "./seed-for.ts";
import type { TankKeeper } from "./tank-keeper.ts";

/** Poured amounts from this share of capacity count as a soaking. Chosen by us. */
const SOAKING_FRAC = 0.1;

/** A doubted observation fades what was learned as much as this many days do. Chosen by us. */
const SHAKEN_DAYS = 60;
const DAY_MS = 24 * HOUR_MS;

type BodyOf<Kind extends EntryBody["kind"]> = Extract<EntryBody, { kind: Kind }>;

/** What entries are applied with. */
export interface Applying {
  readonly context: ReplayContext;
  readonly keeper: TankKeeper;
}

/** The state after one entry of the pot's history. Changes the state's particles in place. */
export function applyEntry(state: PotState, entry: JournalEntry, by: Applying): PotState {
  const { context } = by;
  const { body, atUtcMs } = entry;
  switch (body.kind) {
    case "planted":
      return withRest(planted(state, { ...entry, body }, by), context);
    case "moved":
      return { ...state, spotId: body.toSpotId };
    case "watered":
      return watered(state, { ...entry, body }, by);
    case "weighed":
      return observed(state, entry, by, (on) => observeMass(on, body.massKg));
    case "checked":
      return observed(state, entry, by, (on) => observeFeel(on, body));
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
  { context, keeper }: Applying,
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
  const next = {
    ...state,
    planting,
    particles,
    care,
    blindHours: 0,
    rootsShareFrac: 1,
    fadedUtcMs: entry.atUtcMs,
  };
  setPlantedWetness(keeper.tankFor(next), { mixWet: wet, seed: seed + 1 });
  return { ...next, lastWateredUtcMs: wateredIn ? entry.atUtcMs : state.lastWateredUtcMs };
}

function watered(state: PotState, entry: JournalEntry & { body: BodyOf<"watered"> }, by: Applying): PotState {
  const { given } = entry.body;
  const thriving = by.context.values.leafy
    ? observed(state, entry, by, (on) => {
        observeThriving(on);
        return null;
      })
    : state;
  const seen =
    given.kind === "poured-drained"
      ? observed(thriving, entry, by, (on) => observePour(on, given))
      : thriving;
  if (seen.planting === null || seen.particles === null) return seen;
  const tank = by.keeper.tankFor(seen);
  const full = given.kind === "ran-through" || (given.kind === "poured-drained" && given.drainedMl > 0);
  const pouredMl =
    given.kind === "measured" ? given.waterMl : given.kind === "poured-drained" ? given.pouredMl : 0;
  for (let k = 0; k < tank.size; k++) {
    soakIn({ tank, particle: k, waterMl: full ? Number.POSITIVE_INFINITY : pouredMl });
  }
  const capacityMl = seen.planting.inVessel.hold.capacityMl;
  const soaks = full || pouredMl >= SOAKING_FRAC * capacityMl;
  const care = soaks && seen.care !== null ? soaked(seen.care, entry.atUtcMs) : seen.care;
  return { ...seen, care, lastWateredUtcMs: entry.atUtcMs };
}

function observed(
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
    tank: keeper.tankFor(faded),
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
