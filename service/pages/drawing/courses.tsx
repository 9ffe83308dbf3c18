import { scaleLinear } from "d3-scale";
import { area, line } from "d3-shape";
import type { Spread } from "../../../core/weather/spread.ts";

export interface DrawnCourse {
  /** Class of the stroke: solid, dashed, dotted. */
  readonly stroke: "solid" | "dashed" | "dotted";
  readonly name: string;
  readonly contentFrac: readonly Spread[];
}

export interface CoursesProps {
  readonly courses: readonly DrawnCourse[];
  readonly refillFrac: number;
  /** Names under the axis at the share of its length where each day begins. */
  readonly days: readonly { readonly name: string; readonly atFrac: number }[];
  readonly words: { readonly holds: string; readonly waits: string; readonly label: string };
}

const WIDTH = 360;
const PLOT = { left: 8, right: 352, top: 20, foot: 170 };
const HEIGHT = 190;

/** Ways the coming days could go, drawn over each other: the band of the first, and the middle of each. */
export function Courses({ courses, refillFrac, days, words }: CoursesProps) {
  const [first] = courses;
  if (!first) return null;
  const x = scaleLinear([0, first.contentFrac.length - 1], [PLOT.left, PLOT.right]);
  const highest = Math.max(1, ...courses.flatMap(({ contentFrac }) => contentFrac.map(({ mid }) => mid)));
  const y = scaleLinear([0, highest], [PLOT.foot, PLOT.top]).clamp(true);
  const at = (_: Spread, step: number) => x(step);
  const band = area<Spread>(
    at,
    ({ low }) => y(low),
    ({ high }) => y(high),
  );
  const middle = line<Spread>(at, ({ mid }) => y(mid));
  return (
    <svg class="outlook courses" role="img" aria-label={words.label} viewBox={`0 0 ${WIDTH} ${HEIGHT}`}>
      <defs>
        <pattern id="courses-hatch" width="5" height="5" patternUnits="userSpaceOnUse">
          <path d="M0 2.5H5" />
        </pattern>
      </defs>
      {days.map(({ name, atFrac }) => (
        <g>
          <path class="outlook-midnight" d={`M${px(at1(atFrac))} ${PLOT.top}V${PLOT.foot}`} />
          <text x={px(at1(atFrac)) + 3} y={HEIGHT - 4}>
            {name}
          </text>
        </g>
      ))}
      <path fill="url(#courses-hatch)" class="outlook-band" d={band(first.contentFrac as Spread[]) ?? ""} />
      {courses.map(({ stroke, contentFrac }) => (
        <path class={`course course-${stroke}`} d={middle(contentFrac as Spread[]) ?? ""} />
      ))}
      <path class="outlook-refill" d={`M${PLOT.left} ${px(y(refillFrac))}H${PLOT.right}`} />
      <path
        class="outlook-base"
        d={`M${PLOT.left} ${px(y(1))}H${PLOT.right}M${PLOT.left} ${PLOT.foot}H${PLOT.right}`}
      />
      <text x={PLOT.right} y={px(y(1)) - 4} text-anchor="end">
        {words.holds}
      </text>
      <path class="outlook-refill" d={`M${PLOT.left + 4} ${PLOT.foot - 9}h18`} />
      <text x={PLOT.left + 27} y={PLOT.foot - 5}>
        {words.waits}
      </text>
    </svg>
  );
}

/** A sample of a course's stroke, to stand before its name. */
export function StrokeSample({ stroke }: { stroke: DrawnCourse["stroke"] }) {
  return (
    <svg class="outlook sample" aria-hidden="true" viewBox="0 0 40 12" width={40} height={12}>
      <path class={`course course-${stroke}`} d="M1 6H39" />
    </svg>
  );
}

function at1(frac: number): number {
  return PLOT.left + frac * (PLOT.right - PLOT.left);
}

function px(value: number): number {
  return Math.round(value * 10) / 10;
}
