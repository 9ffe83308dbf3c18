import type { MoistureProfile } from "../../../core/pot/profile.ts";
import type { Vessel } from "../../../core/pot/vessel.ts";
import { mixDepthCm, widthCmAt } from "../../../core/pot/vessel-shape.ts";
import { airlessToCm, hatchHeights } from "./hatch-heights.ts";

export interface PotSectionProps {
  readonly vessel: Vessel;
  /** How the water lies; null when it is not known, the mix is then left bare. */
  readonly profile: MoistureProfile | null;
  /** Drawn size of a centimetre; the same for all pots that stand together. */
  readonly pxPerCm: number;
  /** Depth of water that one hatch line stands for. */
  readonly lineMm: number;
  readonly plant?: { readonly widthCm: number; readonly heightCm: number };
  /** The plant is cut off here above the rim. */
  readonly mostAboveCm?: number;
  /** Layers named beside the pot, from the base up. */
  readonly layers?: readonly SectionLayer[];
  /** Marks on the rod beside the pot. */
  readonly marks?: readonly SectionMark[];
  /** The drawing in one sentence. */
  readonly label: string;
}

export interface SectionLayer {
  readonly fromCm: number;
  readonly toCm: number;
  readonly text: string;
}

export interface SectionMark {
  readonly kind: "now" | "refill" | "tomorrow";
  /** Share of what the drained pot holds. */
  readonly frac: number;
  readonly text: string;
}

interface Part {
  readonly props: PotSectionProps;
  readonly frame: Frame;
}

interface Frame {
  readonly axisPx: number;
  /** Drawn x of a half width, and y of a height above the base. */
  x(offsetCm: number): number;
  y(heightCm: number): number;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** Walls stand out by this, and the saucer reaches this far round the base, cm. Looks only. */
const WALL_CM = 1.6;
const SAUCER_REACH_CM = 3;
const STICK_PX = 96;
const LAYERS_PX = 118;
const LABEL_PX = 14;
const MOST_ABOVE_CM = 40;

/** A pot cut through the middle, to scale: water by density of line, the layer without air solid, dry mix bare. */
export function PotSection(props: PotSectionProps) {
  const { vessel, profile, plant, marks, label } = props;
  const frame = frameFor(props);
  return (
    <svg
      class="pot-section"
      role="img"
      aria-label={label}
      width={round(frame.widthPx)}
      height={round(frame.heightPx)}
      viewBox={`0 0 ${round(frame.widthPx)} ${round(frame.heightPx)}`}
    >
      {plant && <Plant props={props} frame={frame} />}
      {profile && <Water props={props} frame={frame} />}
      <Dressing vessel={vessel} frame={frame} />
      <Wall vessel={vessel} frame={frame} />
      <Saucer vessel={vessel} frame={frame} />
      {marks && <Dipstick props={props} frame={frame} />}
      {props.layers && <Layers props={props} frame={frame} />}
    </svg>
  );
}

function frameFor({
  vessel,
  plant,
  pxPerCm,
  mostAboveCm = MOST_ABOVE_CM,
  marks,
  layers,
}: PotSectionProps): Frame {
  const aboveCm = plant ? Math.min(plant.heightCm, mostAboveCm) : 1;
  const spanCm = Math.max(
    Math.max(vessel.topCm, vessel.baseCm) + 2 * WALL_CM,
    vessel.saucerCm === undefined ? 0 : vessel.baseCm + 2 * (SAUCER_REACH_CM + WALL_CM),
    plant ? Math.min(plant.widthCm, 1.5 * vessel.topCm) : 0,
  );
  const potPx = spanCm * pxPerCm + 4;
  const widthPx = potPx + (marks ? STICK_PX : 0) + (layers ? LAYERS_PX : 0);
  const heightPx = (vessel.heightCm + aboveCm) * pxPerCm + 8;
  const axisPx = potPx / 2;
  const basePx = heightPx - 5;
  return {
    axisPx,
    widthPx,
    heightPx,
    x: (offsetCm) => axisPx + offsetCm * pxPerCm,
    y: (heightCm) => basePx - heightCm * pxPerCm,
  };
}

function Water({ props: { vessel, profile, lineMm }, frame }: Part) {
  const airlessCm = airlessToCm(profile!);
  const lines = hatchHeights(profile!, { lineMm, fromCm: airlessCm })
    .map((heightCm) => {
      const half = widthCmAt(vessel, heightCm) / 2;
      return `M${round(frame.x(-half))} ${round(frame.y(heightCm))}H${round(frame.x(half))}`;
    })
    .join("");
  return (
    <>
      {airlessCm > 0 && <path class="airless" d={bodyPath({ vessel, frame, fromCm: 0, toCm: airlessCm })} />}
      {lines && <path class="water" d={lines} />}
    </>
  );
}

function bodyPath({
  vessel,
  frame,
  fromCm,
  toCm,
}: {
  vessel: Vessel;
  frame: Frame;
  fromCm: number;
  toCm: number;
}) {
  const [low, high] = [widthCmAt(vessel, fromCm) / 2, widthCmAt(vessel, toCm) / 2];
  const point = (offsetCm: number, heightCm: number) =>
    `${round(frame.x(offsetCm))} ${round(frame.y(heightCm))}`;
  return `M${point(-low, fromCm)}L${point(-high, toCm)}L${point(high, toCm)}L${point(low, fromCm)}Z`;
}

/** Walls and base with the drain hole; the class draws the stuff they are made of. */
function Wall({ vessel, frame }: { vessel: Vessel; frame: Frame }) {
  const point = (offsetCm: number, heightCm: number) =>
    `${round(frame.x(offsetCm))} ${round(frame.y(heightCm))}`;
  const [base, top] = [vessel.baseCm / 2, vessel.topCm / 2];
  const hole = Math.min(1, base / 4);
  const side = (sign: 1 | -1) =>
    `M${point(sign * hole, 0)}L${point(sign * base, 0)}L${point(sign * top, vessel.heightCm)}`;
  const d = side(-1) + side(1);
  const depth = mixDepthCm(vessel);
  const half = widthCmAt(vessel, depth) / 2;
  return (
    <>
      <path class="surface" d={`M${point(-half, depth)}L${point(half, depth)}`} />
      <path class={`wall wall-${vessel.material}`} d={d} />
      {vessel.material === "glazed" && <path class="wall-core" d={d} />}
    </>
  );
}

function Dressing({ vessel, frame }: { vessel: Vessel; frame: Frame }) {
  const depthCm = vessel.topDressingCm ?? 0;
  if (depthCm <= 0) return null;
  const fromCm = mixDepthCm(vessel);
  const half = widthCmAt(vessel, fromCm + depthCm / 2) / 2;
  const radiusPx = Math.max(1.2, Math.abs(frame.y(depthCm) - frame.y(0)) / 2);
  const stoneCount = Math.max(3, Math.floor((frame.x(half) - frame.x(-half)) / (2.4 * radiusPx)));
  const centreCm = fromCm + depthCm / 2;
  const stones = Array.from({ length: stoneCount }, (_, i) =>
    stonePath({
      xPx: frame.x(-half + ((i + 0.5) * 2 * half) / stoneCount),
      yPx: frame.y(centreCm),
      radiusPx,
    }),
  );
  return <path class="stone" d={stones.join("")} />;
}

/** A circle as two arcs: one path holds all stones, where a shelf of pots would have hundreds of circles. */
function stonePath({ xPx, yPx, radiusPx }: { xPx: number; yPx: number; radiusPx: number }): string {
  const r = round(radiusPx);
  return `M${round(xPx - r)} ${round(yPx)}a${r} ${r} 0 1 0 ${2 * r} 0a${r} ${r} 0 1 0 ${-2 * r} 0`;
}

function Saucer({ vessel, frame }: { vessel: Vessel; frame: Frame }) {
  if (vessel.saucerCm === undefined || vessel.saucerCm <= 0) return null;
  const [inner, outer] = [vessel.baseCm / 2 + SAUCER_REACH_CM / 2, vessel.baseCm / 2 + SAUCER_REACH_CM];
  const [low, rim] = [frame.y(0) + 3, frame.y(vessel.saucerCm)];
  return (
    <path
      class="saucer"
      d={`M${round(frame.x(-outer))} ${round(rim)}L${round(frame.x(-inner))} ${round(low)}H${round(frame.x(inner))}L${round(frame.x(outer))} ${round(rim)}`}
    />
  );
}

/** Height and spread in a plain stroke; the stem of a plant taller than the drawing is broken. */
function Plant({ props: { vessel, plant, mostAboveCm = MOST_ABOVE_CM }, frame }: Part) {
  const topCm = vessel.heightCm + Math.min(plant!.heightCm, mostAboveCm);
  const half = Math.min(plant!.widthCm, 1.5 * vessel.topCm) / 2;
  const eaveCm = vessel.heightCm + (topCm - vessel.heightCm) * 0.55;
  const crown = {
    left: round(frame.x(-half)),
    right: round(frame.x(half)),
    axis: round(frame.axisPx),
    eave: round(frame.y(eaveCm)),
    top: round(frame.y(topCm)),
  };
  const footPx = round(frame.y(mixDepthCm(vessel)));
  const stem =
    plant!.heightCm > mostAboveCm ? brokenStem(crown, footPx) : `M${crown.axis} ${footPx}V${crown.eave}`;
  return <path class="plant" d={stem + crownArc(crown)} />;
}

type Crown = Record<"left" | "right" | "axis" | "eave" | "top", number>;

/** The draughtsman's sign for a piece left out: two strokes across a gap. */
function brokenStem({ axis, eave }: Crown, footPx: number): string {
  const [low, high] = [round((footPx + eave) / 2 + 2), round((footPx + eave) / 2 - 2)];
  const stroke = (y: number) => `M${axis - 5} ${y + 2}L${axis + 5} ${y - 2}`;
  return `M${axis} ${footPx}V${low}${stroke(low)}${stroke(high)}M${axis} ${high}V${eave}`;
}

function crownArc({ left, right, axis, eave, top }: Crown): string {
  return `M${left} ${eave}Q${left} ${top} ${axis} ${top}Q${right} ${top} ${right} ${eave}`;
}

/** A bracket beside each layer with its name; too thin a one is left out. */
function Layers({ props: { layers }, frame }: Part) {
  const x = round(frame.widthPx - LAYERS_PX + 4);
  return (
    <g class="layers">
      {layers!
        .filter(({ fromCm, toCm }) => toCm - fromCm > 0.3)
        .map(({ fromCm, toCm, text }) => (
          <>
            <path d={`M${x} ${round(frame.y(fromCm) - 1)}h5V${round(frame.y(toCm) + 1)}h-5`} />
            <text x={x + 10} y={round((frame.y(fromCm) + frame.y(toCm)) / 2 + 4)}>
              {text}
            </text>
          </>
        ))}
    </g>
  );
}

/** Now, the refill point and tomorrow beside the wall: the foot is empty, the head is what the drained pot holds. */
function Dipstick({ props: { vessel, marks }, frame }: Part) {
  const x = round(frame.widthPx - STICK_PX + 12);
  const depth = mixDepthCm(vessel);
  const y = (frac: number) => round(frame.y(Math.max(0, Math.min(1.15, frac)) * depth));
  let lastPx = Number.NEGATIVE_INFINITY;
  const labelled = [...marks!]
    .sort((a, b) => b.frac - a.frac)
    .map((mark) => {
      const labelPx = Math.max(y(mark.frac) + 4, lastPx + LABEL_PX);
      lastPx = labelPx;
      return { ...mark, labelPx };
    });
  return (
    <g class="dipstick">
      <path class="stick" d={`M${x} ${y(0)}V${y(1)}M${x - 5} ${y(0)}H${x + 5}M${x - 5} ${y(1)}H${x + 5}`} />
      {labelled.map(({ kind, frac, text, labelPx }) => (
        <>
          <path class={`mark-${kind}`} d={`M${x - 7} ${y(frac)}H${x + 7}`} />
          <text x={x + 11} y={round(labelPx)}>
            {text}
          </text>
        </>
      ))}
    </g>
  );
}

function round(px: number): number {
  return Math.round(px * 10) / 10;
}
