import { type ScaleLinear, scaleLinear } from "d3-scale";
import { line } from "d3-shape";
import { localHour } from "../../../core/site/local-days.ts";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { hourSpans } from "../../brief/sky-lines.ts";
import type { Words } from "../../words/words.ts";
import type { NextHour } from "./next-hours.ts";

/** A deed, or several alike, that falls due at an hour of the strip. */
export interface StripDeed {
  readonly atUtcMs: number;
  readonly text: string;
  /** Said instead where the text finds no room. */
  readonly short: string;
}

export interface DayStripProps {
  readonly hours: readonly NextHour[];
  readonly thunderUtcMs: readonly number[];
  readonly deeds: readonly StripDeed[];
  readonly zone: string;
  /** The drawing in one sentence, and where its figures are told in words. */
  readonly label: string;
  readonly words: Words;
}

// Drawn as wide as a phone, so that the figures keep their size there. All in drawn units.
const WIDTH = 360;
const LEFT = 6;
const RIGHT = WIDTH - 6;
const WARMTH = { top: 26, foot: 82 };
const RAIN = { top: 92, foot: 128 };
const GUSTS = { top: 136, foot: 156 };
const DEEDS_TOP = 172;
const DEED_ROW = 15;
/** Width of a letter at the size of the figures, for keeping labels apart. */
const LETTER = 7;

interface Plot extends DayStripProps {
  readonly x: ScaleLinear<number, number>;
}

/** The next hours as one band: daylight, warmth, rain with its spread, gusts, thunder crossed out, deeds below. */
export function DayStrip(props: DayStripProps) {
  const { hours, label } = props;
  const first = hours[0];
  const last = hours.at(-1);
  if (!first || !last) return null;
  const x = scaleLinear([first.startUtcMs, last.startUtcMs + HOUR_MS], [LEFT, RIGHT]);
  const plot = { ...props, x };
  const labels = deedLabels(plot);
  const rows = Math.max(0, ...labels.map(({ row }) => row + 1));
  const height = DEEDS_TOP + rows * DEED_ROW;
  return (
    <svg class="strip" role="img" aria-label={label} viewBox={`0 0 ${WIDTH} ${height}`}>
      <Nights {...plot} />
      <Clock {...plot} />
      <Thunder {...plot} />
      <Warmth {...plot} />
      <Rain {...plot} />
      <Gusts {...plot} />
      {labels.map((label) => (
        <path
          class="strip-drop"
          d={`M${px(label.atX)} ${GUSTS.foot}V${DEEDS_TOP + label.row * DEED_ROW - 10}`}
        />
      ))}
      {labels.map((label) => (
        <g class="strip-deed">
          <text x={px(label.textX)} y={DEEDS_TOP + label.row * DEED_ROW} text-anchor={label.anchor}>
            {label.text}
          </text>
        </g>
      ))}
    </svg>
  );
}

/** Night hours are ruled; day hours are bare. */
function Nights({ hours, x }: Plot) {
  const d = hours
    .filter(({ isDay }) => !isDay)
    .flatMap(({ startUtcMs }) => [0.1, 0.35, 0.6, 0.85].map((share) => x(startUtcMs + share * HOUR_MS)))
    .map((at) => `M${px(at)} ${WARMTH.top - 8}V${WARMTH.foot + 4}`)
    .join("");
  return <path class="strip-night" d={d} />;
}

function Clock({ hours, x, zone, words }: Plot) {
  const marks = hours.filter(({ startUtcMs }) => localHour(startUtcMs, zone) % 6 < 1 - 1e-9);
  return (
    <>
      {marks.map(({ startUtcMs }) => {
        const text = words.clock(startUtcMs, zone);
        return (
          <g class="strip-hour">
            <path d={`M${px(x(startUtcMs))} 14V${GUSTS.foot}`} />
            <text {...beside(x(startUtcMs), text)} y={11}>
              {text}
            </text>
          </g>
        );
      })}
    </>
  );
}

function Warmth({ hours, x, words }: Plot) {
  const known = hours.filter(({ tempC }) => Number.isFinite(tempC));
  if (known.length === 0) return null;
  const coldest = known.reduce((a, b) => (b.tempC < a.tempC ? b : a));
  const hottest = known.reduce((a, b) => (b.tempC > a.tempC ? b : a));
  const y = scaleLinear(
    [coldest.tempC, Math.max(hottest.tempC, coldest.tempC + 4)],
    [WARMTH.foot - 8, WARMTH.top + 8],
  );
  const middle = ({ startUtcMs }: NextHour) => x(startUtcMs + HOUR_MS / 2);
  const path = line<NextHour>(middle, ({ tempC }) => y(tempC)).defined(({ tempC }) => Number.isFinite(tempC));
  return (
    <>
      <path class="strip-warmth" d={path(hours as NextHour[]) ?? ""} />
      {[coldest, hottest].map((hour, index) => {
        const text = figureText(words, "tempC", hour.tempC);
        return (
          <g class="strip-figure">
            <circle cx={px(middle(hour))} cy={px(y(hour.tempC))} r={2.5} />
            <text {...beside(middle(hour), text)} y={px(y(hour.tempC) + (index === 0 ? 12 : -5))}>
              {text}
            </text>
          </g>
        );
      })}
    </>
  );
}

/** Solid to the middle of the spread, open to its upper end. */
function Rain({ hours, x, words }: Plot) {
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

function Gusts({ hours, x, words }: Plot) {
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

/** Hours in which nobody works outdoors, crossed out from head to foot. */
function Thunder({ thunderUtcMs, hours, x }: Plot) {
  const inStrip = thunderUtcMs.filter((at) => at >= hours[0]!.startUtcMs && at <= hours.at(-1)!.startUtcMs);
  const [top, foot] = [WARMTH.top - 8, GUSTS.foot];
  const d = hourSpans(inStrip)
    .map(({ fromUtcMs, toUtcMs }) => {
      const [from, to] = [px(x(fromUtcMs)), px(x(toUtcMs))];
      return `M${from} ${top}V${foot}M${to} ${top}V${foot}M${from} ${top}L${to} ${foot}M${to} ${top}L${from} ${foot}`;
    })
    .join("");
  return d === "" ? null : <path class="strip-thunder" d={d} />;
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

interface DeedLabel {
  readonly text: string;
  readonly atX: number;
  readonly textX: number;
  readonly anchor: "start" | "end";
  readonly row: number;
}

type Extent = readonly [number, number];

/** Each label in the first row where it does not touch another. */
function deedLabels({ deeds, x, hours }: Plot): DeedLabel[] {
  const [from, to] = [hours[0]!.startUtcMs, hours.at(-1)!.startUtcMs + HOUR_MS];
  const rows: Extent[][] = [];
  return deeds
    .filter(({ atUtcMs }) => atUtcMs >= from && atUtcMs <= to)
    .map((deed) => {
      const placed = placedLabel(deed, x(deed.atUtcMs));
      const touches = (row: readonly Extent[]) =>
        row.some(([start, end]) => placed.extent[0] < end && start < placed.extent[1]);
      const free = rows.findIndex((row) => !touches(row));
      const row = free < 0 ? rows.length : free;
      rows[row] = [...(rows[row] ?? []), placed.extent];
      return { ...placed, row };
    });
}

/** Runs away from the nearer edge; the short text where even so it would run off the strip. */
function placedLabel(deed: StripDeed, atX: number): Omit<DeedLabel, "row"> & { extent: Extent } {
  const isLate = atX > WIDTH / 2;
  const roomPx = isLate ? atX - LEFT : RIGHT - atX;
  const text = deed.text.length * LETTER <= roomPx ? deed.text : deed.short;
  const width = text.length * LETTER;
  return {
    text,
    atX,
    textX: atX,
    anchor: isLate ? "end" : "start",
    extent: isLate ? [atX - width, atX] : [atX, atX + width],
  };
}

/** Text centred on a place, turned inward where half of it would run off the strip. */
function beside(atX: number, text: string): { x: number; "text-anchor": "start" | "middle" | "end" } {
  const half = (text.length * LETTER) / 2;
  if (atX + half > WIDTH) return { x: px(Math.min(atX, RIGHT)), "text-anchor": "end" };
  if (atX < half) return { x: px(Math.max(atX, LEFT)), "text-anchor": "start" };
  return { x: px(atX), "text-anchor": "middle" };
}

function figureText(words: Words, name: string, value: number): string {
  const figure = words.figure(name, value);
  return figure ? `${figure.number}${figure.gap}${figure.unit}` : "";
}

function px(value: number): number {
  return Math.round(value * 10) / 10;
}
