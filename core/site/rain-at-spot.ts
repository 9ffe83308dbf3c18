import { roofEdgeShareFrac } from "./roof-edge-rain.ts";
import type { Spot } from "./spot.ts";
import { emptyColumn, type SpotWork } from "./spot-work.ts";

/** Rain that reaches the rims of pots at a spot, mm: none indoors, by wind behind a roof edge, else the spot's share. */
export function rainAtSpotMm(work: SpotWork): Float64Array {
  const { hours, spot, windFactor } = work;
  const out = emptyColumn(work);
  if (spot.kind === "indoors") return out;
  const edge = spot.kind === "open" ? undefined : spot.roofEdge;
  for (let i = 0; i < out.length; i++) {
    const rain = hours.rainMm[i]!;
    if (rain <= 0) continue;
    out[i] = edge
      ? rain * roofEdgeShareFrac(edge, { rainMmPerH: rain, windMPerS: hours.windMPerS[i]! * windFactor })
      : rain * spot.rainFrac;
  }
  return out;
}

/** Share of the rain in the open that arrives whatever the wind: none indoors and behind a roof edge. */
export function openRainFrac(spot: Spot): number {
  return spot.kind === "indoors" || (spot.kind !== "open" && spot.roofEdge) ? 0 : spot.rainFrac;
}
