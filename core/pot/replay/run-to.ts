import type { SpotForcing } from "../../site/forcing.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { runHours } from "../balance/run-hours.ts";
import { setUnknownWetness } from "../learn/wetness.ts";
import { copyParticles, type Particles } from "../particles.ts";
import { doubtedRain } from "./doubted-rain.ts";
import { countDrought } from "./drought.ts";
import { dayBegun, lived } from "./live.ts";
import type { PotState } from "./pot-state.ts";
import type { ReplayContext } from "./replay-context.ts";
import { seedFor } from "./seed-for.ts";
import { needsAnother, type TankKeeper, tankKeeper } from "./tank-keeper.ts";

const DAY_MS = 24 * HOUR_MS;
/** A gap in the weather longer than this leaves the content unknown. Chosen by us. */
const BLIND_HOURS = 36;

/** Hours of one forcing that are still to be run through the balance. */
interface Batch {
  readonly forcing: SpotForcing;
  readonly fromHour: number;
  readonly toHour: number;
}

/**
 * The state some whole hours later, through the weather where the pot stands. Moves the state's particles on in place.
 *
 * The balance is run in stretches in which nothing changes, at most to the end of a day, when drought is counted.
 */
export function runTo(
  state: PotState,
  untilUtcMs: number,
  by: { context: ReplayContext; keeper: TankKeeper },
): PotState {
  const { context, keeper } = by;
  let now = state;
  let batch: Batch | null = null;
  while (now.atUtcMs + HOUR_MS <= untilUtcMs) {
    const recordFrom = now.recordFromUtcMs ?? now.atUtcMs;
    const isRecorded = now.atUtcMs >= recordFrom;
    const dayEnd = (Math.floor(now.atUtcMs / DAY_MS) + 1) * DAY_MS;
    const stretchUntil = Math.min(dayEnd, untilUtcMs, isRecorded ? dayEnd : recordFrom);
    const seen = seenHours(context.past.get(now.spotId), {
      fromUtcMs: now.atUtcMs,
      untilUtcMs: stretchUntil,
    });
    if (seen !== null && now.particles !== null && isRecorded) {
      now = { ...now, particles: knownWetness(now, context)! };
      batch = joined(batch, seen);
    }
    const next = atDayStart(after(now, { seen, isRecorded, stretchUntil }), context);
    const dayIsOver = next.atUtcMs % DAY_MS === 0;
    if (
      batch !== null &&
      (dayIsOver || seen === null || needsAnother(now, next) || next.atUtcMs + HOUR_MS > untilUtcMs)
    ) {
      const rain = doubtedRain(batch, { ...context, size: now.particles!.size });
      runHours(keeper.tankFor(now), { ...batch, pourMl: 0, rain }, null);
      batch = null;
      if (dayIsOver) countDrought(now, context);
    }
    now = next;
  }
  return now;
}

function joined(batch: Batch | null, seen: Batch): Batch {
  return batch === null ? seen : { ...batch, toHour: seen.toHour };
}

/** Hours of the forcing within a stretch; null when there is none. */
function seenHours(
  forcing: SpotForcing | undefined,
  stretch: { fromUtcMs: number; untilUtcMs: number },
): Batch | null {
  if (forcing === undefined) return null;
  const fromHour = Math.max(0, (stretch.fromUtcMs - forcing.startUtcMs) / HOUR_MS);
  const toHour = Math.min(forcing.hourCount, (stretch.untilUtcMs - forcing.startUtcMs) / HOUR_MS);
  return fromHour < toHour ? { forcing, fromHour, toHour } : null;
}

/** What a stretch does to the plant; its content stays unknown where nothing is seen or written down. */
function after(
  state: PotState,
  of: { seen: Batch | null; isRecorded: boolean; stretchUntil: number },
): PotState {
  if (of.seen === null) return blind(state, of.stretchUntil);
  const next = lived(state, of.seen);
  return of.isRecorded ? next : { ...next, blindHours: state.blindHours + of.seen.toHour - of.seen.fromHour };
}

function blind(state: PotState, untilUtcMs: number): PotState {
  const blindHours = state.blindHours + (untilUtcMs - state.atUtcMs) / HOUR_MS;
  return { ...state, atUtcMs: untilUtcMs, blindHours };
}

function atDayStart(state: PotState, context: ReplayContext): PotState {
  return state.atUtcMs % DAY_MS === 0 ? dayBegun(state, context) : state;
}

/** The particles, spread over all contents that may be when the weather was not known for too long. */
export function knownWetness(state: PotState, context: ReplayContext): Particles | null {
  if (state.particles === null || state.blindHours <= BLIND_HOURS) return state.particles;
  const particles = copyParticles(state.particles);
  const tank = tankKeeper(context).tankFor({ ...state, particles });
  setUnknownWetness(tank, { plan: context, seed: seedFor(context, "unknown") });
  particles.droughtFrac?.fill(0);
  return particles;
}
