import { nightDropC } from "./night-drop.ts";
import type { SpotWork } from "./spot-work.ts";

/**
 * Leaf and stem at a spot, °C: the air, at night less the drop against a clear calm sky where the spot is open, plus
 * what walls and floors give back. Under eaves and roofs there is no drop: 1.8 °C was the difference of one porch on
 * one frosty morning, and the air there is not colder than the site's.
 * @param airC air among the pots
 */
export function leafAtSpotC(work: SpotWork, airC: Float64Array): Float64Array {
  const { hours, spot, windFactor } = work;
  const out = airC.slice();
  if (spot.kind === "indoors") return out;
  const { skyFrac, nightWarmthC } = spot;
  for (let hour = 0; hour < hours.hourCount; hour++) {
    const warmthC = nightWarmthC * warmthShare(work.sun.heightSine[hour]!);
    if (!work.isNight[hour] && warmthC === 0) continue;
    for (let i = hour * hours.memberCount; i < (hour + 1) * hours.memberCount; i++) {
      const windMPerS = hours.windMPerS[i]! * windFactor;
      const drop =
        spot.kind === "open" && work.isNight[hour]
          ? nightDropC({ cloudFrac: hours.cloudFrac[i]!, windMPerS, skyFrac })
          : 0;
      out[i]! += warmthC - drop;
    }
  }
  return out;
}

/** Sines of 5 and 20 degrees: walls and floor go on giving back warmth past sunrise, when the air is coldest. Chosen by us. */
const [LOW_SUN_SINE, RISEN_SUN_SINE] = [Math.sin(Math.PI / 36), Math.sin(Math.PI / 9)];

/** Share of a spot's night warmth that is felt while the sun stands at a height. */
function warmthShare(sunSine: number): number {
  return Math.min(1, Math.max(0, (RISEN_SUN_SINE - sunSine) / (RISEN_SUN_SINE - LOW_SUN_SINE)));
}
