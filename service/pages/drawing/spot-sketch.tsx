import type { Spot } from "../../../core/site/spot.ts";

const WIDTH = 132;
const HEIGHT = 84;
const GROUND = 76;
const POT_X = 66;
const MOST_STROKES = 8;

/** What a spot lets through: the more strokes, the more sun (slanting), rain (upright) and wind (level) arrive. */
export function SpotSketch({ spot, label }: { spot: Spot; label: string }) {
  return (
    <svg
      class="spot-sketch"
      role="img"
      aria-label={label}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      width={WIDTH}
      height={HEIGHT}
    >
      <path class="sketch-sun" d={sunStrokes(spot.sunFrac)} />
      <path class="sketch-rain" d={rainStrokes(rainShare(spot))} />
      <path class="sketch-wind" d={windStrokes(spot.windFrac)} />
      <path class="sketch-roof" d={roof(spot)} />
      <path class="sketch-ground" d={`M4 ${GROUND}H${WIDTH - 4}`} />
      <path
        class="sketch-pot"
        d={`M${POT_X - 9} 58L${POT_X - 6} ${GROUND}H${POT_X + 6}L${POT_X + 9} 58M${POT_X} 58V46`}
      />
    </svg>
  );
}

/** Behind a roof edge some rain still drives in; that it depends on the wind is said in words. */
function rainShare({ kind, rainFrac }: Spot): number {
  return kind === "roof-edge" ? 0.25 : rainFrac;
}

function strokes(share: number, stroke: (index: number) => string): string {
  const count = Math.round(Math.max(0, Math.min(1, share)) * MOST_STROKES);
  return Array.from({ length: count }, (_, index) => stroke(index)).join("");
}

function sunStrokes(share: number): string {
  return strokes(share, (index) => `M${4 + index * 6} ${8 + (index % 2) * 5}l14 14`);
}

function rainStrokes(share: number): string {
  return strokes(share, (index) => `M${76 + index * 6.5} ${10 + (index % 2) * 6}v12`);
}

function windStrokes(share: number): string {
  return strokes(share / 2, (index) => `M6 ${44 + index * 7}h${28 - (index % 2) * 8}`);
}

/** Nothing, an edge, a roof, or four walls. */
function roof({ kind, roofEdge }: Spot): string {
  switch (kind) {
    case "open":
      return "";
    case "roof-edge":
      return `M${WIDTH - 6} ${GROUND}V34H${Math.max(20, POT_X - 12 - (roofEdge?.behindM ?? 0.5) * 14)}`;
    case "roofed":
      return `M16 34H${WIDTH - 10}M22 34V${GROUND}M${WIDTH - 16} 34V${GROUND}`;
    case "indoors":
      return `M40 ${GROUND}V34H${WIDTH - 40}V${GROUND}`;
  }
}
