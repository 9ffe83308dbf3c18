import { diffuseShareFrac } from "../weather/diffuse-share.ts";
import { emptyColumn, type SpotWork } from "./spot-work.ts";

/** Sun and sky light at a spot, MJ/m2 in the hour: sky light by its share of sky, direct sun by its share of sun. */
export function lightAtSpotMjPerM2(work: SpotWork): Float64Array {
  const { radiationMjPerM2, hourCount, memberCount } = work.hours;
  const { skyFrac } = work.spot;
  const out = emptyColumn(work);
  for (let hour = 0; hour < hourCount; hour++) {
    const above = work.sun.extraterrestrialMjPerM2[hour]!;
    const sunFrac = work.sunShareFrac[hour]!;
    for (let i = hour * memberCount; i < (hour + 1) * memberCount; i++) {
      const sun = radiationMjPerM2[i]!;
      const diffuse = above > 0 ? diffuseShareFrac(sun / above) : 1;
      out[i] = sun * (diffuse * skyFrac + (1 - diffuse) * sunFrac);
    }
  }
  return out;
}
