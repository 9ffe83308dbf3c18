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
  /** In place of the forcing's. */
  readonly rain?: OwnRain | null;
}

/** Rain at the rim that each particle has for itself, on the forcing's axis. */
export interface OwnRain {
  /** Index = hour * size + particle, mm. */
  readonly rainMm: Float64Array;
  /** 1 for each hour in which it rains on any particle. */
  readonly rains: Uint8Array;
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
  const step = stepFor(tank, run, ledger);
  const rainMembers = step.rainStride === 1 ? tank.size : 1;
  const rains = run.rain?.rains ?? rainHours(forcing.rainMm, forcing.memberCount);
  for (let hour = fromHour; hour < toHour; hour++) {
    step.at = hour * forcing.memberCount;
    step.rainAt = hour * rainMembers;
    if (ledger !== null) {
      step.out = (ledger.firstRow + hour - fromHour) * tank.size;
    }
    step.pourMl = hour === fromHour ? run.pourMl : 0;
    step.tookIn = step.pourMl > 0 || rains[hour] === 1;
    if (step.tookIn) takeIn(tank, step);
    else if (step.tells) stayDry(tank.size, step);
    if (tank.saucerMostMl > 0) wick(tank);
    lose(tank, step);
  }
}

function stepFor(tank: Tank, { forcing, rain }: Run, ledger: Ledger | null): Step {
  const { size } = tank;
  const { memberCount, et0Mm } = forcing;
  const rainMm = rain?.rainMm ?? forcing.rainMm;
  if (memberCount !== 1 && memberCount !== size) {
    throw new RangeError(`forcing has ${memberCount} members; expected 1 or the cloud's ${size}`);
  }
  const { waterMl, drainedMl, wetBase, wettedMl } = ledger?.hours ?? oneHour(size);
  const stride = memberCount === 1 ? 0 : 1;
  const columns = { waterMl, drainedMl, wetBase, wettedMl };
  const rainStride = rain ? 1 : stride;
  const weather = { et0Mm, rainMm, stride, at: 0, rainStride, rainAt: 0 } as const;
  return { ...weather, pourMl: 0, tookIn: false, ...columns, tells: ledger !== null, out: 0 };
}

type OneHour = Pick<Step, "waterMl" | "drainedMl" | "wetBase" | "wettedMl">;

/** Room for one hour by size of the cloud, overwritten by each, where nobody asks for the course. */
const ONE_HOUR = new Map<number, OneHour>();

function oneHour(size: number): OneHour {
  const known = ONE_HOUR.get(size);
  if (known !== undefined) return known;
  const column = () => new Float64Array(size);
  const made = { waterMl: column(), drainedMl: column(), wetBase: new Uint8Array(size), wettedMl: column() };
  ONE_HOUR.set(size, made);
  return made;
}

/** Every pot at a spot asks for the same hours of one forecast, whose columns do not change once made. */
const RAIN_HOURS = new WeakMap<Float64Array, Uint8Array>();

/** 1 for each hour in which it rains in any member. */
function rainHours(rainMm: Float64Array, memberCount: number): Uint8Array {
  const known = RAIN_HOURS.get(rainMm);
  const hourCount = rainMm.length / memberCount;
  if (known !== undefined && known.length === hourCount) return known;
  const rains = new Uint8Array(hourCount);
  for (let i = 0; i < rainMm.length; i++) if (rainMm[i]! > 0) rains[Math.floor(i / memberCount)] = 1;
  RAIN_HOURS.set(rainMm, rains);
  return rains;
}

function stayDry(size: number, step: Step): void {
  const { drainedMl, wettedMl, out } = step;
  for (let k = 0; k < size; k++) {
    drainedMl[out + k] = 0;
    wettedMl[out + k] = 0;
  }
}
