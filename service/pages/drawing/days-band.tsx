import { scaleLinear } from "d3-scale";
import type { DayOutline } from "../../../core/plan/plan.ts";
import type { Words } from "../../words/words.ts";

const WIDTH = 360;
const WARMTH = { top: 34, foot: 92 };
const RAIN = { top: 112, foot: 146 };
const HEIGHT = 176;
/** More would leave no room for the names of the days. */
const MOST_IN_ROW = 8;

/** The coming days side by side, two weeks in two rows of one scale: coldest to hottest, rain with its spread, gusts, thunder crossed out. */
export function DaysBand({ days, words }: { days: readonly DayOutline[]; words: Words }) {
  const known = days.filter(
    ({ tempMinC, tempMaxC }) => Number.isFinite(tempMinC.mid) && Number.isFinite(tempMaxC.mid),
  );
  if (known.length === 0) return null;
  const rowCount = Math.ceil(known.length / MOST_IN_ROW);
  const inRow = Math.ceil(known.length / rowCount);
  const step = (WIDTH - 8) / inRow;
  const lowest = Math.min(...known.map(({ tempMinC }) => tempMinC.low));
  const highest = Math.max(...known.map(({ tempMaxC }) => tempMaxC.high));
  const warmth = scaleLinear([lowest, Math.max(highest, lowest + 5)], [WARMTH.foot, WARMTH.top]);
  const most = Math.max(5, ...known.map(({ rainMm }) => rainMm.high));
  const rain = scaleLinear([0, most], [RAIN.foot, RAIN.top]);
  return (
    <svg
      class="strip days-band"
      role="img"
      aria-label={words.say("days.label")}
      viewBox={`0 0 ${WIDTH} ${rowCount * HEIGHT}`}
    >
      {Array.from({ length: rowCount }, (_, row) => (
        <g transform={`translate(0 ${row * HEIGHT})`}>
          <path class="strip-base" d={`M4 ${RAIN.foot}H${WIDTH - 4}`} />
          {known.slice(row * inRow, (row + 1) * inRow).map((day, index) => (
            <Day day={day} x={4 + (index + 0.5) * step} step={step} scales={{ warmth, rain }} words={words} />
          ))}
        </g>
      ))}
    </svg>
  );
}

interface DayProps {
  readonly day: DayOutline;
  readonly x: number;
  readonly step: number;
  readonly scales: Record<"warmth" | "rain", (value: number) => number>;
  readonly words: Words;
}

function Day({ day, x, step, scales: { warmth, rain }, words }: DayProps) {
  const bar = Math.min(14, step * 0.5);
  // Whole degrees: a week stands on the width of a phone.
  const number = (name: string, value: number) => words.figure(name, Math.round(value))?.number ?? "";
  const box = (mm: number) =>
    `M${px(x - bar / 2)} ${RAIN.foot}V${px(rain(mm))}H${px(x + bar / 2)}V${RAIN.foot}Z`;
  const [coldest, hottest] = [warmth(day.tempMinC.mid), warmth(day.tempMaxC.mid)];
  return (
    <g>
      <text x={px(x)} y={12} text-anchor="middle">
        {words.weekday(day.day)}
      </text>
      <path class="strip-warmth" d={`M${px(x)} ${px(coldest)}V${px(hottest)}`} />
      <path class="band-spread" d={spreadTicks({ x, day, warmth })} />
      <text x={px(x)} y={px(Math.min(hottest, warmth(day.tempMaxC.high)) - 5)} text-anchor="middle">
        {number("tempC", day.tempMaxC.mid)}
      </text>
      <text x={px(x)} y={px(Math.max(coldest, warmth(day.tempMinC.low)) + 14)} text-anchor="middle">
        {number("tempC", day.tempMinC.mid)}
      </text>
      {day.rainMm.high >= 0.1 && <path class="strip-rain-high" d={box(day.rainMm.high)} />}
      {day.rainMm.mid >= 0.1 && <path class="strip-rain" d={box(day.rainMm.mid)} />}
      {day.thunderHours.length > 0 && (
        <path
          class="strip-thunder"
          d={`M${px(x - step / 2 + 2)} ${RAIN.top}L${px(x + step / 2 - 2)} ${RAIN.foot}M${px(x + step / 2 - 2)} ${RAIN.top}L${px(x - step / 2 + 2)} ${RAIN.foot}`}
        />
      )}
      <text class="band-gust" x={px(x)} y={HEIGHT - 8} text-anchor="middle">
        {number("gustMPerS", day.gustMPerS)}
      </text>
    </g>
  );
}

/** Short strokes at the ends of what the coldest and the hottest may be. */
function spreadTicks({
  x,
  day,
  warmth,
}: {
  x: number;
  day: DayOutline;
  warmth: (value: number) => number;
}): string {
  return [day.tempMinC.low, day.tempMinC.high, day.tempMaxC.low, day.tempMaxC.high]
    .map((value) => `M${px(x - 4)} ${px(warmth(value))}h8`)
    .join("");
}

function px(value: number): number {
  return Math.round(value * 10) / 10;
}
