import type { SpotForcing } from "../../site/forcing.ts";
import type { Trajectory } from "../trajectory.ts";
import { lose } from "./lose.ts";
import type { Step } from "./step.ts";
import { takeIn, wick } from "./take-in.ts";
import type { Tank } from "./tank.ts";

/** Hours of one forcing to run, as indices on its own axis; what is poured is given in the first of them. */
export interface Run {
  readonly forcing: SpotForcing;
  readonly fromHour: number;
  readonly toHour: number;
  /** Infinity means until it runs through. */
  readonly pourMl: number;
}

/** Where to write the hours; the first of the run goes to `firstRow`. */
export interface Ledger {
  readonly hours: Trajectory;
  readonly firstRow: number;
}

/**
 * The hourly water balance, in this order: rain and can in, drain to capacity (the saucer holds back and gives back),
 * evaporate from the surface, lose through the wall, transpire, rise from the body to the surface.
 *
 * Advances the tank in place. Members run innermost over plain columns and nothing is allocated by the hour. Every
 * step keeps order - a wetter surface or body never becomes the drier one - so more rain never dries a pot.
 *
 * @throws RangeError when the forcing has neither one course of weather nor one for each particle
 */
export function runHours(tank: Tank, run: Run, ledger: Ledger | null): void {
  const { forcing, fromHour, toHour } = run;
  const step = stepFor(tank, forcing, ledger);
  for (let hour = fromHour; hour < toHour; hour++) {
    step.at = hour * forcing.memberCount;
    if (ledger !== null) {
      step.out = (ledger.firstRow + hour - fromHour) * tank.size;
      if (hour === fromHour || hour % 24 === 0) reckonDemandOfDay(tank, forcing, hour, step);
    }
    step.pourMl = hour === fromHour ? run.pourMl : 0;
    if (step.pourMl > 0 || rains(step, forcing.memberCount)) takeIn(tank, step);
    else if (step.tells) stayDry(tank.size, step);
    if (tank.saucerMostMl > 0) wick(tank);
    lose(tank, step);
  }
}

function stepFor(tank: Tank, forcing: SpotForcing, ledger: Ledger | null): Step {
  const { size } = tank;
  const { memberCount, et0Mm, rainMm } = forcing;
  if (memberCount !== 1 && memberCount !== size) {
    throw new RangeError(`forcing has ${memberCount} members; expected 1 or the cloud's ${size}`);
  }
  const { waterMl, drainedMl, wetBase, wettedMl, shortFrac } = ledger?.hours ?? oneHour(size);
  const stride = memberCount === 1 ? 0 : 1;
  const perDay = new Float64Array(size);
  const columns = { waterMl, drainedMl, wetBase, wettedMl, shortFrac };
  return { et0Mm, rainMm, stride, at: 0, pourMl: 0, ...columns, tells: ledger !== null, out: 0, perDay };
}

/** Room for one hour, overwritten by each, where nobody asks for the course. */
function oneHour(size: number): Pick<Step, "waterMl" | "drainedMl" | "wetBase" | "wettedMl" | "shortFrac"> {
  const column = () => new Float64Array(size);
  return {
    waterMl: column(),
    drainedMl: column(),
    wetBase: new Uint8Array(size),
    wettedMl: column(),
    shortFrac: column(),
  };
}

function rains(step: Step, memberCount: number): boolean {
  const { rainMm, at } = step;
  for (let m = 0; m < memberCount; m++) if (rainMm[at + m]! > 0) return true;
  return false;
}

function stayDry(size: number, step: Step): void {
  const { drainedMl, wettedMl, out } = step;
  for (let k = 0; k < size; k++) {
    drainedMl[out + k] = 0;
    wettedMl[out + k] = 0;
  }
}

/** What each particle's plant asks for over the whole day (24 hours of the forcing's axis) that holds the hour. */
function reckonDemandOfDay(tank: Tank, forcing: SpotForcing, hour: number, step: Step): void {
  const { memberCount, hourCount, et0Mm } = forcing;
  const { perDay, stride } = step;
  const from = hour - (hour % 24);
  const to = Math.min(from + 24, hourCount);
  perDay.fill(0);
  for (let h = from; h < to; h++) {
    for (let k = 0; k < tank.size; k++) perDay[k]! += et0Mm[h * memberCount + k * stride]!;
  }
  for (let k = 0; k < tank.size; k++) {
    const askedMl = perDay[k]! * tank.thirstMlPerMm[k]!;
    perDay[k] = askedMl > 0 ? 1 / askedMl : 0;
  }
}
