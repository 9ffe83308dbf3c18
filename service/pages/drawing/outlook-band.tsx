import { scaleLinear } from "d3-scale";
import { area, line } from "d3-shape";
import type { Spread } from "../../../core/weather/spread.ts";
import type { Words } from "../../words/words.ts";

/** What the pot holds at an instant, as shares of what the drained pot holds. */
export interface OutlookPoint {
  readonly atUtcMs: number;
  readonly contentFrac: Spread;
}

export interface OutlookDay {
  readonly name: string;
  readonly fromUtcMs: number;
  readonly toUtcMs: number;
  readonly rainMm: Spread | null;
  /** Coldest of the night at the spot. */
  readonly coldestC: Spread | null;
}

/** Something that is planned for an hour. */
export interface OutlookMark {
  readonly atUtcMs: number;
  readonly text: string;
}

export interface OutlookBandProps {
  /** From now on; at least two. */
  readonly points: readonly OutlookPoint[];
  readonly days: readonly OutlookDay[];
  readonly refillFrac: number;
  /** Above this the base is waterlogged; null where that is not known. */
  readonly wetAboveFrac: number | null;
  readonly marks: readonly OutlookMark[];
  readonly capacityMl: number;
  readonly label: string;
  readonly words: Words;
}

const WIDTH = 360;
const PLOT = { left: 8, right: 352, top: 22, foot: 150 };
const RAIN = { top: 158, foot: 182 };
const COLD_FOOT = 196;
const HEIGHT = 214;
/** A day narrower than these has no room for its name, or for the coldest of its night. */
const NAME_PX = 26;
const COLD_PX = 36;

interface Plotted extends OutlookBandProps {
  x(utcMs: number): number;
  y(frac: number): number;
}

/** A pot's coming days as a band: the spread first, the middle second, the line at which it waits for water. */
export function OutlookBand(props: OutlookBandProps) {
  const { points, refillFrac, wetAboveFrac } = props;
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last || points.length < 2) return null;
  const x = scaleLinear([first.atUtcMs, last.atUtcMs], [PLOT.left, PLOT.right]);
  const highest = Math.max(1, wetAboveFrac ?? 0, ...points.map(({ contentFrac }) => contentFrac.high));
  const y = scaleLinear([0, highest], [PLOT.foot, PLOT.top]);
  const at = ({ atUtcMs }: OutlookPoint) => x(atUtcMs);
  const edge = (end: keyof Spread) => line<OutlookPoint>(at, ({ contentFrac }) => y(contentFrac[end]));
  const band = area<OutlookPoint>(
    at,
    ({ contentFrac }) => y(contentFrac.low),
    ({ contentFrac }) => y(contentFrac.high),
  );
  const drawn = points as OutlookPoint[];
  return (
    <svg class="outlook" role="img" aria-label={props.label} viewBox={`0 0 ${WIDTH} ${HEIGHT}`}>
      <defs>
        <pattern id="band-hatch" width="5" height="5" patternUnits="userSpaceOnUse">
          <path d="M0 2.5H5" />
        </pattern>
      </defs>
      <DayColumns {...props} x={x} y={y} />
      <path class="outlook-band" fill="url(#band-hatch)" d={band(drawn) ?? ""} />
      <path class="outlook-edge" d={edge("low")(drawn) ?? ""} />
      <path class="outlook-edge" d={edge("high")(drawn) ?? ""} />
      <path class="outlook-middle" d={edge("mid")(drawn) ?? ""} />
      <path class="outlook-refill" d={`M${PLOT.left} ${px(y(refillFrac))}H${PLOT.right}`} />
      {wetAboveFrac !== null && (
        <path class="outlook-wet" d={`M${PLOT.left} ${px(y(wetAboveFrac))}H${PLOT.right}`} />
      )}
      <Marks {...props} x={x} y={y} />
      <path class="outlook-today" d={`M${PLOT.left} ${PLOT.top - 8}V${PLOT.foot}`} />
      <Levels {...props} x={x} y={y} />
    </svg>
  );
}

/** A line at the hour of each planned watering, named at its head. */
function Marks({ marks, points, x }: Plotted) {
  const lastUtcMs = points.at(-1)!.atUtcMs;
  return marks
    .filter(({ atUtcMs }) => atUtcMs < lastUtcMs)
    .map(({ atUtcMs, text }) => {
      const at = px(Math.max(PLOT.left, x(atUtcMs)));
      return (
        <g class="outlook-mark">
          <path d={`M${at} ${PLOT.top - 10}V${PLOT.foot}M${at - 4} ${PLOT.top - 10}h8`} />
          <text x={at + 6} y={PLOT.top - 6}>
            {text}
          </text>
        </g>
      );
    });
}

/** The axis in words: what the drained pot holds, where it waits for water, and where it stands too wet. */
function Levels({ capacityMl, wetAboveFrac, words, y }: Plotted) {
  return (
    <>
      <path
        class="outlook-base"
        d={`M${PLOT.left} ${px(y(1))}H${PLOT.right}M${PLOT.left} ${PLOT.foot}H${PLOT.right}`}
      />
      <text x={PLOT.right} y={px(y(1)) - 4} text-anchor="end">
        {words.say("outlook.holds", { capacityMl })}
      </text>
      <path class="outlook-refill" d={`M${PLOT.left + 4} ${PLOT.foot - 9}h18`} />
      <text x={PLOT.left + 27} y={PLOT.foot - 5}>
        {words.say("outlook.waits")}
      </text>
      {wetAboveFrac !== null && (
        <>
          <path class="outlook-wet" d={`M${PLOT.left + 176} ${PLOT.foot - 9}h18`} />
          <text x={PLOT.left + 199} y={PLOT.foot - 5}>
            {words.say("outlook.too-wet")}
          </text>
        </>
      )}
    </>
  );
}

/** Names of the days, a faint line at each midnight, and the rain that reaches the spot. */
function DayColumns({ days, words, x }: Plotted) {
  return days.map(({ name, fromUtcMs, toUtcMs, rainMm, coldestC }) => {
    const [from, to] = [x(fromUtcMs), x(toUtcMs)];
    const middle = px((from + to) / 2);
    return (
      <g>
        <path class="outlook-midnight" d={`M${px(to)} ${PLOT.top}V${RAIN.foot}`} />
        {to - from >= NAME_PX && (
          <text x={middle} y={HEIGHT - 3} text-anchor="middle">
            {name}
          </text>
        )}
        {rainMm && rainMm.mid >= 0.5 && (
          <text x={middle} y={RAIN.foot - 8} text-anchor="middle">
            {words.say("outlook.rain", { rainMm: rainMm.mid })}
          </text>
        )}
        {coldestC && to - from >= COLD_PX && (
          <text class="outlook-cold" x={middle} y={COLD_FOOT - 3} text-anchor="middle">
            {words.say("outlook.coldest", { coldestC: coldestC.mid })}
          </text>
        )}
      </g>
    );
  });
}

function px(value: number): number {
  return Math.round(value * 10) / 10;
}
