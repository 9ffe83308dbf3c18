import { runHours } from "./balance/run-hours.ts";
import type { Tank } from "./balance/tank.ts";
import { tankOf } from "./balance/tank-of.ts";
import { particlesOf, type Stores, storesFor } from "./particles.ts";
import { type PotNow, tankPlanOf } from "./pot-now.ts";
import type { Pour, Stretch, Trajectory } from "./trajectory.ts";

/** A pot made ready to be rolled out again and again from the same start. */
export interface Launch {
  readonly now: PotNow;
  /** Its stores are moved on by every roll-out. */
  readonly tank: Tank;
  readonly start: Stores;
}

/**
 * Builds the tank that all roll-outs of one pot share.
 *
 * @param over  the launch of a pot that is done with, to be written over; made anew when left out
 */
export function launchOf(now: PotNow, over: Launch | null = null): Launch {
  const { size } = now.cloud;
  const like = over?.tank.size === size ? over : null;
  const start = like?.start ?? storesFor(size);
  const { surfaceMl, bodyMl, saucerMl } = like?.tank ?? storesFor(size);
  const particles = { ...particlesOf(now.cloud, now.inVessel.hold, start), surfaceMl, bodyMl, saucerMl };
  return { now, tank: tankOf(tankPlanOf(now), particles, null, like?.tank), start };
}

function tankAtStart({ tank, start }: Launch): Tank {
  tank.surfaceMl.set(start.surfaceMl);
  tank.bodyMl.set(start.bodyMl);
  tank.saucerMl.set(start.saucerMl);
  return tank;
}

/**
 * The pot's cloud through the coming hours, standing where the stretches say and given what the pours say.
 *
 * Hour h of the course is hour h of each stretch's forcing. `drainedMl` is what left the pot and its saucer; `wettedMl`
 * is all that reached the mix, what ran through included.
 *
 * @param from  the pot made ready, where it is rolled out more than once; made when left out
 * @param into  a trajectory of the same size and length to write over; made anew when left out
 * @throws RangeError when no stretch covers the first hour or a forcing is too short
 */
export function rollOut(
  input: {
    now: PotNow;
    stretches: readonly Stretch[];
    pours: readonly Pour[];
    hourCount: number;
    from?: Launch;
  },
  into?: Trajectory,
): Trajectory {
  const { now, hourCount } = input;
  const hours = into ?? trajectoryFor(now.cloud.size, hourCount);
  const tank = tankAtStart(input.from ?? launchOf(now));
  const cuts = cutsOf(input);
  for (const [i, fromHour] of cuts.entries()) {
    const toHour = cuts[i + 1] ?? hourCount;
    const { forcing } = stretchAt(input.stretches, fromHour);
    if (forcing.hourCount < toHour)
      throw new RangeError(`forcing ends at ${forcing.hourCount}, asked to ${toHour}`);
    const pourMl = pouredAt(input.pours, fromHour);
    runHours(tank, { forcing, fromHour, toHour, pourMl }, { hours, firstRow: fromHour });
  }
  return hours;
}

/** An empty trajectory. */
export function trajectoryFor(size: number, hourCount: number): Trajectory {
  const column = () => new Float64Array(size * hourCount);
  return {
    hourCount,
    size,
    waterMl: column(),
    drainedMl: column(),
    wetBase: new Uint8Array(size * hourCount),
    wettedMl: column(),
  };
}

/** Hours at which something changes: the start, a carry, a pour. */
function cutsOf(input: {
  stretches: readonly Stretch[];
  pours: readonly Pour[];
  hourCount: number;
}): number[] {
  const marks = [0, ...input.stretches.map((s) => s.fromHour), ...input.pours.map((p) => p.hour)];
  return [...new Set(marks)].filter((hour) => hour >= 0 && hour < input.hourCount).sort((a, b) => a - b);
}

function stretchAt(stretches: readonly Stretch[], hour: number): Stretch {
  let found: Stretch | undefined;
  for (const stretch of stretches) {
    if (stretch.fromHour <= hour && (found === undefined || stretch.fromHour >= found.fromHour))
      found = stretch;
  }
  if (found === undefined) throw new RangeError(`no stretch covers hour ${hour}`);
  return found;
}

function pouredAt(pours: readonly Pour[], hour: number): number {
  let sumMl = 0;
  for (const pour of pours) if (pour.hour === hour) sumMl += pour.waterMl;
  return sumMl;
}
