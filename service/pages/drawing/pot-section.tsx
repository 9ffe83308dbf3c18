import type { MoistureProfile } from "../../../core/pot/profile.ts";
import { mixDepthCm, widthCmAt } from "../../../core/pot/vessel-shape.ts";
import { Dipstick, Layers, type SectionLayer, type SectionMark } from "./beside-section.tsx";
import { airlessToCm, hatchHeights } from "./hatch-heights.ts";
import { linePath } from "./line-path.ts";
import {
  type FramedSection,
  MOST_ABOVE_CM,
  SAUCER_REACH_CM,
  type SectionFrame,
  sectionFrame,
} from "./section-frame.ts";

export interface PotSectionProps extends FramedSection {
  /** How the water lies; null when it is not known, the mix is then left bare. */
  readonly profile: MoistureProfile | null;
  /** Depth of water that one hatch line stands for. */
  readonly lineMm: number;
  /** Layers named beside the pot, from the base up. */
  readonly layers?: readonly SectionLayer[];
  /** Marks on the rod beside the pot. */
  readonly marks?: readonly SectionMark[];
  /** The drawing in one sentence. */
  readonly label: string;
}

interface Part {
  readonly props: PotSectionProps;
  readonly frame: SectionFrame;
}

/** A pot cut through the middle, to scale: water by density of line, the layer without air solid, dry mix bare. */
export function PotSection(props: PotSectionProps) {
  const { vessel, marks, layers } = props;
  const frame = sectionFrame(props);
  const { widthPx, heightPx } = frame;
  const part = { props, frame };
  return (
    <svg
      class="pot-section"
      role="img"
      aria-label={props.label}
      width={widthPx}
      viewBox={`0 0 ${widthPx} ${heightPx}`}
    >
      {props.plant && <Plant {...part} />}
      {props.profile && <Water {...part} />}
      <Dressing {...part} />
      <Wall {...part} />
      <Saucer {...part} />
      {marks && <Dipstick vessel={vessel} marks={marks} frame={frame} />}
      {layers && <Layers layers={layers} frame={frame} />}
    </svg>
  );
}

function Water({ props: { vessel, profile, lineMm }, frame }: Part) {
  const airlessCm = airlessToCm(profile!);
  const across = (heightCm: number) => {
    const half = widthCmAt(vessel, heightCm) / 2;
    return [place(frame, -half, heightCm), place(frame, half, heightCm)] as const;
  };
  const lines = hatchHeights(profile!, { lineMm, fromCm: airlessCm }).map(across);
  const [low, high] = [across(0), across(airlessCm)];
  return (
    <>
      {airlessCm > 0 && <path class="airless" d={`${linePath([[low[0], high[0], high[1], low[1]]])}z`} />}
      {lines.length > 0 && <path class="water" d={linePath(lines)} />}
    </>
  );
}

function place({ x, y }: SectionFrame, offsetCm: number, heightCm: number) {
  return [x(offsetCm), y(heightCm)] as const;
}

/** Walls and base with the drain hole; the class draws the stuff they are made of. */
function Wall({ props: { vessel }, frame }: Part) {
  const [base, top] = [vessel.baseCm / 2, vessel.topCm / 2];
  const hole = Math.min(1, base / 4);
  const side = (sign: 1 | -1) => [
    place(frame, sign * hole, 0),
    place(frame, sign * base, 0),
    place(frame, sign * top, vessel.heightCm),
  ];
  const d = linePath([side(-1), side(1)]);
  const depth = mixDepthCm(vessel);
  const half = widthCmAt(vessel, depth) / 2;
  return (
    <>
      <path class="surface" d={linePath([[place(frame, -half, depth), place(frame, half, depth)]])} />
      <path class={`wall wall-${vessel.material}`} d={d} />
      {vessel.material === "glazed" && <path class="wall-core" d={d} />}
    </>
  );
}

function Dressing({ props: { vessel }, frame }: Part) {
  const depthCm = vessel.topDressingCm ?? 0;
  if (depthCm <= 0) return null;
  const centreCm = mixDepthCm(vessel) + depthCm / 2;
  const half = widthCmAt(vessel, centreCm) / 2;
  const radiusPx = Math.max(1.2, Math.abs(frame.y(depthCm) - frame.y(0)) / 2);
  const stoneCount = Math.max(3, Math.floor((frame.x(half) - frame.x(-half)) / (2.4 * radiusPx)));
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

function Saucer({ props: { vessel }, frame }: Part) {
  const { saucerCm = 0, baseCm } = vessel;
  if (saucerCm <= 0) return null;
  const [inner, outer] = [baseCm / 2 + SAUCER_REACH_CM / 2, baseCm / 2 + SAUCER_REACH_CM];
  const [low, rim] = [frame.y(0) + 3, frame.y(saucerCm)];
  const half = (sign: 1 | -1) => [
    [frame.x(sign * outer), rim] as const,
    [frame.x(sign * inner), low] as const,
  ];
  return <path class="saucer" d={linePath([[...half(-1), ...half(1).reverse()]])} />;
}

/** Height and spread in a plain stroke; the stem of a plant taller than the drawing is broken. */
function Plant({ props: { vessel, plant, mostAboveCm = MOST_ABOVE_CM }, frame }: Part) {
  const topCm = vessel.heightCm + Math.min(plant!.heightCm, mostAboveCm);
  const half = Math.min(plant!.widthCm, 1.5 * vessel.topCm) / 2;
  const [eavePx, footPx] = [
    frame.y(vessel.heightCm + (topCm - vessel.heightCm) * 0.55),
    frame.y(mixDepthCm(vessel)),
  ];
  const { axisPx } = frame;
  const stem =
    plant!.heightCm > mostAboveCm
      ? brokenStem(axisPx, { eavePx, footPx })
      : [[[axisPx, footPx] as const, [axisPx, eavePx] as const]];
  const crown = crownArc({ halfPx: frame.x(half) - axisPx, risePx: eavePx - frame.y(topCm) });
  // The stem ends where the crown is widest; its arc goes on from there.
  return <path class="plant" d={linePath(stem) + crown} />;
}

/** The draughtsman's sign for a piece left out: two strokes across a gap. */
function brokenStem(axisPx: number, { eavePx, footPx }: { eavePx: number; footPx: number }) {
  const [low, high] = [(footPx + eavePx) / 2 + 2, (footPx + eavePx) / 2 - 2];
  const at = (yPx: number) => [axisPx, yPx] as const;
  const stroke = (yPx: number) => [[axisPx - 5, yPx + 2] as const, [axisPx + 5, yPx - 2] as const];
  return [[at(footPx), at(low)], stroke(low), stroke(high), [at(high), at(eavePx)]];
}

/** Over the end of the stem, from side to side. */
function crownArc({ halfPx, risePx }: { halfPx: number; risePx: number }): string {
  const [half, rise] = [round(halfPx), round(risePx)];
  return `m${-half} 0q0 ${-rise} ${half} ${-rise}t${half} ${rise}`;
}

function round(px: number): number {
  return Math.round(px * 10) / 10;
}
