import { scaleLinear } from "d3-scale";
import { area, line } from "d3-shape";
import type { Spread } from "../../../core/plan/plan.ts";
import type { Words } from "../../words/words.ts";

export interface OutlookBandProps {
  /** Content by day from today on, as shares of what the drained pot holds. */
  readonly byDayFrac: readonly Spread[];
  readonly dayNames: readonly string[];
  readonly rainMm: readonly Spread[];
  readonly refillFrac: number;
  readonly capacityMl: number;
  readonly label: string;
  readonly words: Words;
}

const WIDTH = 360;
const PLOT = { left: 8, right: 352, top: 22, foot: 150 };
const RAIN_FOOT = 186;
const HEIGHT = 206;

interface Plotted extends OutlookBandProps {
  x(day: number): number;
  y(frac: number): number;
}

/** A pot's coming days as a band: the spread first, the middle second, the line at which it waits for water. */
export function OutlookBand(props: OutlookBandProps) {
  const { byDayFrac, refillFrac } = props;
  if (byDayFrac.length < 2) return null;
  const x = scaleLinear([0, byDayFrac.length - 1], [PLOT.left, PLOT.right]);
  const highest = Math.max(1, ...byDayFrac.map(({ high }) => high));
  const y = scaleLinear([0, highest], [PLOT.foot, PLOT.top]);
  const at = (_: Spread, day: number) => x(day);
  const spreads = byDayFrac as Spread[];
  const band = area<Spread>(
    at,
    ({ low }) => y(low),
    ({ high }) => y(high),
  );
  const middle = line<Spread>(at, ({ mid }) => y(mid));
  return (
    <svg class="outlook" role="img" aria-label={props.label} viewBox={`0 0 ${WIDTH} ${HEIGHT}`}>
      <defs>
        <pattern id="band-hatch" width="5" height="5" patternUnits="userSpaceOnUse">
          <path d="M0 2.5H5" />
        </pattern>
      </defs>
      <path class="outlook-band" fill="url(#band-hatch)" d={band(spreads) ?? ""} />
      <path class="outlook-edge" d={line<Spread>(at, ({ low }) => y(low))(spreads) ?? ""} />
      <path class="outlook-edge" d={line<Spread>(at, ({ high }) => y(high))(spreads) ?? ""} />
      <path class="outlook-middle" d={middle(spreads) ?? ""} />
      <Levels {...props} x={x} y={y} />
      <path class="outlook-today" d={`M${PLOT.left} ${PLOT.top - 8}V${PLOT.foot}`} />
      <DaysBelow {...props} x={x} y={y} />
      {refillFrac > 0 && (
        <path class="outlook-refill" d={`M${PLOT.left} ${px(y(refillFrac))}H${PLOT.right}`} />
      )}
    </svg>
  );
}

/** The axis in words: what the drained pot holds, and where it waits for water. */
function Levels({ refillFrac, capacityMl, words, y }: Plotted) {
  return (
    <>
      <path
        class="outlook-base"
        d={`M${PLOT.left} ${px(y(1))}H${PLOT.right}M${PLOT.left} ${PLOT.foot}H${PLOT.right}`}
      />
      <text x={PLOT.right} y={px(y(1)) - 4} text-anchor="end">
        {words.say("outlook.holds", { capacityMl })}
      </text>
      <text x={PLOT.right} y={px(y(refillFrac)) - 4} text-anchor="end">
        {words.say("outlook.waits")}
      </text>
    </>
  );
}

function DaysBelow({ dayNames, rainMm, words, x }: Plotted) {
  const step = x(1) - x(0);
  return (
    <>
      {dayNames.map((name, day) => (
        <text class="outlook-day" x={px(x(day))} y={HEIGHT - 4} text-anchor={anchorOf(day, dayNames.length)}>
          {name}
        </text>
      ))}
      {rainMm.map((rain, day) =>
        rain.high < 0.5 || day >= dayNames.length - 1 ? null : (
          <text class="outlook-rain" x={px(x(day) + step / 2)} y={RAIN_FOOT - 12} text-anchor="middle">
            {words.say("outlook.rain", { rainMm: rain.mid })}
          </text>
        ),
      )}
    </>
  );
}

function anchorOf(day: number, dayCount: number): "start" | "middle" | "end" {
  if (day === 0) return "start";
  return day === dayCount - 1 ? "end" : "middle";
}

function px(value: number): number {
  return Math.round(value * 10) / 10;
}
