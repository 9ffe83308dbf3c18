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
  /** Marks on the dipstick beside the pot, as shares of what the drained pot holds. */
  readonly marks?: { readonly nowFrac: number; readonly refillFrac: number; readonly tomorrowFrac?: number };
  /** The drawing in one sentence. */
  readonly label: string;
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
const STICK_GAP_PX = 14;

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
    </svg>
  );
}

function frameFor({ vessel, plant, pxPerCm, mostAboveCm = 40, marks }: PotSectionProps): Frame {
  const aboveCm = plant ? Math.min(plant.heightCm, mostAboveCm) : 1;
  const spanCm = Math.max(
    Math.max(vessel.topCm, vessel.baseCm) + 2 * WALL_CM,
    vessel.saucerCm === undefined ? 0 : vessel.baseCm + 2 * (SAUCER_REACH_CM + WALL_CM),
    plant ? Math.min(plant.widthCm, 1.5 * vessel.topCm) : 0,
  );
  const stickPx = marks ? STICK_GAP_PX + 8 : 0;
  const widthPx = spanCm * pxPerCm + 2 * stickPx + 4;
  const heightPx = (vessel.heightCm + aboveCm) * pxPerCm + 8;
  const axisPx = widthPx / 2;
  const basePx = heightPx - 5;
  return {
    axisPx,
    widthPx,
    heightPx,
    x: (offsetCm) => axisPx + offsetCm * pxPerCm,
    y: (heightCm) => basePx - heightCm * pxPerCm,
  };
}

function Water({ props: { vessel, profile, lineMm }, frame }: { props: PotSectionProps; frame: Frame }) {
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
      <path class="water" d={lines} />
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
  return (
    <g class="stones">
      {Array.from({ length: stoneCount }, (_, i) => (
        <circle
          cx={round(frame.x(-half + ((i + 0.5) * 2 * half) / stoneCount))}
          cy={round(frame.y(fromCm + depthCm / 2))}
          r={round(radiusPx)}
        />
      ))}
    </g>
  );
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

/** Height and spread in a plain stroke; a plant taller than the drawing is left open at the top. */
function Plant({
  props: { vessel, plant, mostAboveCm = 40 },
  frame,
}: {
  props: PotSectionProps;
  frame: Frame;
}) {
  const topCm = vessel.heightCm + Math.min(plant!.heightCm, mostAboveCm);
  const half = Math.min(plant!.widthCm, 1.5 * vessel.topCm) / 2;
  const eaveCm = vessel.heightCm + (topCm - vessel.heightCm) * 0.45;
  const crown = {
    left: round(frame.x(-half)),
    right: round(frame.x(half)),
    axis: round(frame.axisPx),
    eave: round(frame.y(eaveCm)),
    top: round(frame.y(topCm)),
  };
  const stem = `M${crown.axis} ${round(frame.y(mixDepthCm(vessel)))}V${crown.eave}`;
  return (
    <path class="plant" d={stem + (plant!.heightCm > mostAboveCm ? openCrown(crown) : crownArc(crown))} />
  );
}

type Crown = Record<"left" | "right" | "axis" | "eave" | "top", number>;

function openCrown({ left, right, eave, top }: Crown): string {
  return `M${left} ${eave}V${top}M${right} ${eave}V${top}`;
}

function crownArc({ left, right, axis, eave, top }: Crown): string {
  return `M${left} ${eave}Q${left} ${top} ${axis} ${top}Q${right} ${top} ${right} ${eave}`;
}

/** Now, the refill point and tomorrow beside the wall: the foot is empty, the head is what the drained pot holds. */
function Dipstick({ props: { vessel, marks }, frame }: { props: PotSectionProps; frame: Frame }) {
  const x = frame.widthPx - STICK_GAP_PX;
  const depth = mixDepthCm(vessel);
  const y = (frac: number) => round(frame.y(Math.max(0, Math.min(1.15, frac)) * depth));
  const mark = (frac: number, halfPx: number) => `M${round(x - halfPx)} ${y(frac)}H${round(x + halfPx)}`;
  return (
    <g class="dipstick">
      <path class="stick" d={`M${round(x)} ${y(0)}V${y(1)}`} />
      <path class="mark-refill" d={mark(marks!.refillFrac, 8)} />
      {marks!.tomorrowFrac !== undefined && <path class="mark-tomorrow" d={mark(marks!.tomorrowFrac, 6)} />}
      <path class="mark-now" d={mark(marks!.nowFrac, 6)} />
    </g>
  );
}

function round(px: number): number {
  return Math.round(px * 10) / 10;
}
