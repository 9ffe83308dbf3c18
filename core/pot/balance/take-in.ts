import type { Step } from "./step.ts";
import { contentMl, type Tank } from "./tank.ts";

/**
 * Share of the can that runs out at the base when a grower waters until it runs through. Chosen by us within the
 * 10 to 15 % that nurseries aim at.
 */
export const LEACH_FRAC = 0.12;

/**
 * Rain and can in, surface first, then the body, then the saucer; the rest drains away. Mix that is dry enough to
 * shed water takes the body only part of the way up in this hour, and the rest runs past.
 */
export function takeIn(tank: Tank, step: Step): void {
  const { size, catchMlPerMm, account } = tank;
  const { rainMm, rainAt, rainStride, pourMl, wettedMl, drainedMl, out } = step;
  const runsThrough = pourMl === Number.POSITIVE_INFINITY;
  for (let k = 0; k < size; k++) {
    const rainMl = rainMm[rainAt + k * rainStride]! * catchMlPerMm[k]!;
    const waterMl = rainMl + (runsThrough ? runThroughMl(tank, k) : pourMl);
    wettedMl[out + k] = waterMl;
    drainedMl[out + k] = waterMl > 0 ? soakIn({ tank, particle: k, waterMl }) : 0;
  }
  if (account === null) return;
  for (let k = 0; k < size; k++) {
    account.enteredMl[k]! += wettedMl[out + k]!;
    account.drainedMl[k]! += drainedMl[out + k]!;
  }
}

/** What a can must hold to fill the pot and run through, mL. */
export function runThroughMl(tank: Tank, particle: number): number {
  return (tank.surfaceMl[particle]! + tank.bodyMl[particle]!) / (1 - LEACH_FRAC);
}

/** Lets water into one particle (Infinity fills it); returns what ran out at the base beyond the saucer. */
export function soakIn({
  tank,
  particle: k,
  waterMl,
}: {
  tank: Tank;
  particle: number;
  waterMl: number;
}): number {
  const bodyRoom = bodyRoomMl(tank, k);
  const onSurface = Math.min(tank.surfaceMl[k]!, waterMl);
  tank.surfaceMl[k]! -= onSurface;
  const inBody = Math.min(bodyRoom, waterMl - onSurface);
  tank.bodyMl[k]! -= inBody;
  const surplus = waterMl - onSurface - inBody;
  const held = Math.min(tank.saucerMostMl - tank.saucerMl[k]!, surplus);
  tank.saucerMl[k]! += held;
  return surplus - held;
}

/**
 * What the body takes in one go: all that is missing, but for what dry mix lets run past. That begins below the
 * content at which the mix sheds and is whole at half of it.
 */
function bodyRoomMl(tank: Tank, particle: number): number {
  const missing = tank.bodyMl[particle]!;
  const below = tank.shedsBelowMl[particle]!;
  const content = contentMl(tank, particle);
  if (content >= below) return missing;
  const shed = Math.min(1, 2 * (1 - content / below)) * tank.shedsMissingMl[particle]!;
  return Math.max(0, missing - shed);
}

/** What one watering can leave behind in the pot and its saucer, mL. */
export function roomMl(tank: Tank, particle: number): number {
  const saucer = tank.saucerMostMl - tank.saucerMl[particle]!;
  return tank.surfaceMl[particle]! + bodyRoomMl(tank, particle) + saucer;
}

/** Water in the saucer rises into whatever room there is, the body first. */
export function wick(tank: Tank): void {
  const { size, saucerMl, bodyMl, surfaceMl } = tank;
  for (let k = 0; k < size; k++) {
    const standing = saucerMl[k]!;
    if (standing <= 0) continue;
    const inBody = Math.min(standing, bodyMl[k]!);
    const toSurface = Math.min(standing - inBody, surfaceMl[k]!);
    bodyMl[k]! -= inBody;
    surfaceMl[k]! -= toSurface;
    saucerMl[k] = standing - inBody - toSurface;
  }
}
