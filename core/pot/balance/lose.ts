import type { Step } from "./step.ts";
import type { Tank } from "./tank.ts";

/**
 * The losses of one hour, for all particles: surface, wall, plant, then the rise from the body.
 *
 * The falling stage of surface drying is the exact hour of d(missing)/dt = S2 / (2 missing) down to half, and of
 * exponential drying of a finite slab beyond; the demand caps both. [PHILIP1957, VANDERBORGHT2005 eq. 44-47]
 * The plant takes from the surface by its share of roots there, and from the body what that leaves, each cut by its
 * own dryness. [FAO56 eq. 84] Nothing here calls or divides by the particle but for one square root, and one
 * division under a top dressing.
 */
export function lose(tank: Tank, step: Step): void {
  const { size, capacityMl, wetAboveMl, surfaceMl, bodyMl, saucerMl } = tank;
  const { surfaceMostMl, surfaceHalfMl, surfaceUsableMl, surfaceMlPerMm, sorptionMl2PerH, lateShare } = tank;
  const { bodyMostMl, bodyUsableMl, wallPerMm, thirstMlPerMm, riseMlPerH, surfaceRootsFrac } = tank;
  const { perSurfaceUsable, perBodyUsable, perSurfaceMost, perBodyMost, coverBase, coverPerMl } = tank;
  const { evaporatedMl, wallLossMl, transpiredMl } = tank;
  const { et0Mm, stride, at, out, waterMl, wetBase, shortFrac, drainedMl, perDay } = step;
  const covered = coverBase !== 1;
  for (let k = 0; k < size; k++) {
    const et0 = et0Mm[at + k * stride]!;
    let top = surfaceMl[k]!;
    let body = bodyMl[k]!;

    let demand = et0 * surfaceMlPerMm[k]!;
    if (covered) demand /= coverBase + coverPerMl[k]! * demand;
    const supply =
      top < surfaceHalfMl[k]!
        ? Math.sqrt(top * top + sorptionMl2PerH[k]!) - top
        : lateShare[k]! * (surfaceMostMl[k]! - top);
    const dried = supply < demand ? supply : demand;
    top += dried;
    evaporatedMl[k]! += dried;

    const wall = et0 * wallPerMm[k]! * (bodyMostMl[k]! - body);
    body += wall;
    wallLossMl[k]! += wall;

    const thirst = et0 * thirstMlPerMm[k]!;
    const topEase = (surfaceUsableMl[k]! - top) * perSurfaceUsable[k]!;
    const fromTop = thirst * surfaceRootsFrac * (topEase > 1 ? 1 : topEase > 0 ? topEase : 0);
    const bodyEase = (bodyUsableMl[k]! - body) * perBodyUsable[k]!;
    const fromBody = (thirst - fromTop) * (bodyEase > 1 ? 1 : bodyEase > 0 ? bodyEase : 0);
    const rise =
      riseMlPerH[k]! * ((top + fromTop) * perSurfaceMost[k]! - (body + fromBody) * perBodyMost[k]!);
    top += fromTop - rise;
    body += fromBody + rise;
    transpiredMl[k]! += fromTop + fromBody;

    surfaceMl[k] = top;
    bodyMl[k] = body;
    const water = capacityMl[k]! - top - body;
    waterMl[out + k] = water;
    wetBase[out + k] = water > wetAboveMl[k]! || drainedMl[out + k]! > 0 || saucerMl[k]! > 0 ? 1 : 0;
    shortFrac[out + k] = (thirst - fromTop - fromBody) * perDay[k]!;
  }
}
