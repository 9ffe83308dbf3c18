import type { Vessel } from "../../../core/pot/vessel.ts";
import { mixDepthCm } from "../../../core/pot/vessel-shape.ts";
import { linePath } from "./line-path.ts";
import { LAYERS_PX, type SectionFrame, STICK_PX } from "./section-frame.ts";

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

const LABEL_PX = 14;
/** Thinner layers are left out, cm. */
const THIN_CM = 0.3;

/** A bracket beside each layer with its name. */
export function Layers({ layers, frame }: { layers: readonly SectionLayer[]; frame: SectionFrame }) {
  const x = Math.round(frame.widthPx - LAYERS_PX + 4);
  return (
    <g class="layers">
      {layers
        .filter(({ fromCm, toCm }) => toCm - fromCm > THIN_CM)
        .map(({ fromCm, toCm, text }) => {
          const [low, high] = [frame.y(fromCm) - 1, frame.y(toCm) + 1];
          return (
            <>
              <path
                d={linePath([
                  [
                    [x, low],
                    [x + 5, low],
                    [x + 5, high],
                    [x, high],
                  ],
                ])}
              />
              <text x={x + 10} y={Math.round((low + high) / 2 + 4)}>
                {text}
              </text>
            </>
          );
        })}
    </g>
  );
}

interface DipstickProps {
  readonly vessel: Vessel;
  readonly marks: readonly SectionMark[];
  readonly frame: SectionFrame;
}

/** Now, the refill point and tomorrow beside the wall: the foot is empty, the head is what the drained pot holds. */
export function Dipstick({ vessel, marks, frame }: DipstickProps) {
  const x = Math.round(frame.widthPx - STICK_PX + 12);
  const depth = mixDepthCm(vessel);
  const y = (frac: number) => frame.y(Math.max(0, Math.min(1.15, frac)) * depth);
  const across = (frac: number, halfPx: number) =>
    [
      [x - halfPx, y(frac)],
      [x + halfPx, y(frac)],
    ] as const;
  const rod = [
    [x, y(0)],
    [x, y(1)],
  ] as const;
  return (
    <g class="dipstick">
      <path class="stick" d={linePath([rod, across(0, 5), across(1, 5)])} />
      {labelled(marks, y).map(({ kind, frac, text, labelPx }) => (
        <>
          <path class={`mark-${kind}`} d={linePath([across(frac, 7)])} />
          <text x={x + 11} y={labelPx}>
            {text}
          </text>
        </>
      ))}
    </g>
  );
}

/** From the head down, each name below the one before. */
function labelled(marks: readonly SectionMark[], y: (frac: number) => number) {
  let lastPx = Number.NEGATIVE_INFINITY;
  return [...marks]
    .sort((a, b) => b.frac - a.frac)
    .map((mark) => {
      lastPx = Math.max(Math.round(y(mark.frac) + 4), lastPx + LABEL_PX);
      return { ...mark, labelPx: lastPx };
    });
}
