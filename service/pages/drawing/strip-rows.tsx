import { scaleLinear } from "d3-scale";
import { line } from "d3-shape";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { figureText } from "../../words/figures.ts";
import type { NextHour } from "./next-hours.ts";
import { beside, GUSTS, LEFT, type Plot, px, RAIN, RIGHT, WARMTH } from "./strip-frame.ts";

/** Warmth as a line, its coldest and hottest hour told. */
export function Warmth({ hours, x, words }: Plot) {
  const known = hours.filter(({ tempC }) => Number.isFinite(tempC));
  if (known.length === 0) return null;
  const coldest = known.reduce((a, b) => (b.tempC < a.tempC ? b : a));
  const hottest = known.reduce((a, b) => (b.tempC > a.tempC ? b : a));
  const y = scaleLinear(
    [coldest.tempC, Math.max(hottest.tempC, coldest.tempC + 4)],
    [WARMTH.foot - 15, WARMTH.top + 16],
  );
  const middle = ({ startUtcMs }: NextHour) => x(startUtcMs + HOUR_MS / 2);
  const path = line<NextHour>(middle, ({ tempC }) => y(tempC)).defined(({ tempC }) => Number.isFinite(tempC));
  return (
    <>
      <path class="strip-warmth" d={path(hours as NextHour[]) ?? ""} />
      {[coldest, hottest].map((hour, index) => {
        const figure = words.figure("tempC", hour.tempC);
        const text = figure ? figureText(figure) : "";
        return (
          <g class="strip-figure">
            <text {...beside(middle(hour), text)} y={px(y(hour.tempC) + (index === 0 ? 13 : -5))}>
              {text}
            </text>
            <circle cx={px(middle(hour))} cy={px(y(hour.tempC))} r={2.5} />
          </g>
        );
      })}
    </>
  );
}

/** Solid to the middle of the spread, open to its upper end. */
export function Rain({ hours, x, words }: Plot) {
  const highest = Math.max(0, ...hours.map(({ rainMm }) => (Number.isFinite(rainMm.high) ? rainMm.high : 0)));
  if (highest < 0.1) return <RowNote y={RAIN.foot} text={words.say("strip.dry")} />;
  const y = scaleLinear([0, Math.max(2, highest)], [RAIN.foot, RAIN.top]);
  const wet = hours.filter(({ rainMm }) => rainMm.high >= 0.05);
  const peak = wet.reduce((a, b) => (b.rainMm.high > a.rainMm.high ? b : a));
  const bar = ({ startUtcMs }: NextHour, mm: number) =>
    `M${px(x(startUtcMs) + 2)} ${RAIN.foot}V${px(y(mm))}H${px(x(startUtcMs + HOUR_MS) - 2)}V${RAIN.foot}Z`;
  const most = words.say("strip.rain-most", { mostMm: peak.rainMm.high });
  return (
    <>
      <path class="strip-base" d={`M${LEFT} ${RAIN.foot}H${RIGHT}`} />
      <path class="strip-rain-high" d={wet.map((hour) => bar(hour, hour.rainMm.high)).join("")} />
      <path class="strip-rain" d={wet.map((hour) => bar(hour, hour.rainMm.mid)).join("")} />
      <text
        class="strip-text"
        {...beside(x(peak.startUtcMs + HOUR_MS / 2), most)}
        y={px(y(peak.rainMm.high) - 3)}
      >
        {most}
      </text>
    </>
  );
}

/** A stroke for each hour, the strongest told. */
export function Gusts({ hours, x, words }: Plot) {
  const known = hours.filter(({ gustMPerS }) => Number.isFinite(gustMPerS));
  if (known.length === 0) return <RowNote y={GUSTS.foot} text={words.say("strip.gusts-unknown")} />;
  const strongest = known.reduce((a, b) => (b.gustMPerS > a.gustMPerS ? b : a));
  const y = scaleLinear([0, Math.max(20, strongest.gustMPerS)], [GUSTS.foot, GUSTS.top]);
  const d = known
    .map(
      ({ startUtcMs, gustMPerS }) => `M${px(x(startUtcMs + HOUR_MS / 2))} ${GUSTS.foot}V${px(y(gustMPerS))}`,
    )
    .join("");
  const most = words.say("strip.gust-most", { gustMPerS: strongest.gustMPerS });
  return (
    <>
      <path class="strip-base" d={`M${LEFT} ${GUSTS.foot}H${RIGHT}`} />
      <path class="strip-gusts" d={d} />
      <text
        class="strip-text"
        {...beside(x(strongest.startUtcMs + HOUR_MS / 2), most)}
        y={px(y(strongest.gustMPerS) - 2)}
      >
        {most}
      </text>
    </>
  );
}

function RowNote({ y, text }: { y: number; text: string }) {
  return (
    <>
      <path class="strip-base" d={`M${LEFT} ${y}H${RIGHT}`} />
      <text class="strip-text" x={LEFT} y={y - 4}>
        {text}
      </text>
    </>
  );
}
