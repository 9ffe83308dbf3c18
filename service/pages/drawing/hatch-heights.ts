import type { MoistureProfile } from "../../../core/pot/profile.ts";

/**
 * Heights of the hatch lines, cm above the base. Each line stands for the same depth of water, so the lines lie closer
 * where the mix is wetter, and their number is the water in the pot. Dry mix has none.
 *
 * @param lineMm  depth of water that one line stands for, mm
 * @param fromCm  lines start above this; what lies below is drawn otherwise
 */
export function hatchHeights(
  profile: MoistureProfile,
  { lineMm, fromCm }: { lineMm: number; fromCm: number },
): number[] {
  const heights: number[] = [];
  const { heightCm, waterFrac } = profile;
  let sinceLineMm = 0;
  for (let cut = 1; cut < heightCm.length; cut++) {
    const [low, high] = [heightCm[cut - 1]!, heightCm[cut]!];
    if (high <= fromCm) continue;
    const mmPerCm = (10 * (waterFrac[cut - 1]! + waterFrac[cut]!)) / 2;
    let at = Math.max(low, fromCm);
    while (mmPerCm > 0 && sinceLineMm + mmPerCm * (high - at) >= lineMm) {
      at += (lineMm - sinceLineMm) / mmPerCm;
      heights.push(at);
      sinceLineMm = 0;
    }
    sinceLineMm += mmPerCm * (high - at);
  }
  return heights;
}

/** Air below this leaves roots without breath; the line between "solid" and "hatched". */
const AIRLESS_FRAC = 0.1;

/** Top of the layer at the base that has too little air, cm above the base; 0 when there is none. */
export function airlessToCm({ heightCm, airFrac }: MoistureProfile): number {
  if (airFrac[0]! >= AIRLESS_FRAC) return 0;
  const cut = airFrac.findIndex((frac) => frac >= AIRLESS_FRAC);
  if (cut < 0) return heightCm[heightCm.length - 1]!;
  const [lowAir, highAir] = [airFrac[cut - 1]!, airFrac[cut]!];
  const share = (AIRLESS_FRAC - lowAir) / (highAir - lowAir);
  return heightCm[cut - 1]! + share * (heightCm[cut]! - heightCm[cut - 1]!);
}
