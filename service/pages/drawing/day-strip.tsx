import { calendarDay, localHour } from "../../../core/site/local-days.ts";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { hourSpans } from "../../brief/sky-lines.ts";
import type { Words } from "../../words/words.ts";
import type { NextHour } from "./next-hours.ts";
import { Deeds, deedLabels, footOf, type StripDeed } from "./strip-deeds.tsx";
import { beside, GUSTS, hourScale, LETTER, type Plot, px, WARMTH, WIDTH } from "./strip-frame.ts";
import { Gusts, Rain, Warmth } from "./strip-rows.tsx";

export interface DayStripProps {
  readonly hours: readonly NextHour[];
  readonly thunderUtcMs: readonly number[];
  readonly deeds: readonly StripDeed[];
  readonly zone: string;
  /** The drawing in one sentence, and where its figures are told in words. */
  readonly label: string;
  readonly words: Words;
}

/** The next hours as one band: daylight, warmth, rain with its spread, gusts, thunder crossed out, deeds below. */
export function DayStrip({ hours, thunderUtcMs, deeds, zone, label, words }: DayStripProps) {
  const [first, ...others] = hours;
  if (!first) return null;
  const plot: Plot = { hours, zone, words, x: hourScale([first, ...others]) };
  const labels = deedLabels({ ...plot, deeds });
  return (
    <svg class="strip" role="img" aria-label={label} viewBox={`0 0 ${WIDTH} ${footOf(labels)}`}>
      <Nights {...plot} />
      <Clock {...plot} />
      <Thunder {...plot} thunderUtcMs={thunderUtcMs} />
      <Warmth {...plot} />
      <Rain {...plot} />
      <Gusts {...plot} />
      <Deeds labels={labels} />
    </svg>
  );
}

/** Night hours are ruled; day hours are bare. */
function Nights({ hours, x }: Plot) {
  const d = hours
    .filter(({ isDay }) => !isDay)
    .flatMap(({ startUtcMs }) => [0.1, 0.35, 0.6, 0.85].map((share) => x(startUtcMs + share * HOUR_MS)))
    .map((at) => `M${px(at)} ${WARMTH.top}V${WARMTH.foot}`)
    .join("");
  return <path class="strip-night" d={d} />;
}

const MARK_EVERY_HOURS = 6;

/** Every six hours; midnight bears the name of the day that begins, and the first hour that of its own if it fits. */
function Clock({ hours, x, zone, words }: Plot) {
  const marks = hours.filter(({ startUtcMs }) => localHour(startUtcMs, zone) % MARK_EVERY_HOURS < 1 - 1e-9);
  return (
    <>
      {marks.map(({ startUtcMs }, index) => {
        const roomPx = index === 0 ? x(startUtcMs + MARK_EVERY_HOURS * HOUR_MS) - x(startUtcMs) : 0;
        const text = markText(startUtcMs, { zone, words, roomPx });
        return (
          <g class="strip-hour">
            <path d={`M${px(x(startUtcMs))} 15V${GUSTS.foot}`} />
            <text {...beside(x(startUtcMs), text)} y={12}>
              {text}
            </text>
          </g>
        );
      })}
    </>
  );
}

function markText(
  utcMs: number,
  { zone, words, roomPx }: Pick<Plot, "zone" | "words"> & { roomPx: number },
): string {
  const weekday = words.weekday(calendarDay(utcMs, zone));
  if (localHour(utcMs, zone) < 1 - 1e-9) return weekday;
  const clock = words.clock(utcMs, zone);
  const both = words.say("strip.day-clock", { weekday, clock });
  return (both.length + 1) * LETTER <= roomPx ? both : clock;
}

/** Hours in which nobody works outdoors: fenced in from head to foot and crossed out where no figures are written. */
function Thunder({ thunderUtcMs, hours, x }: Plot & Pick<DayStripProps, "thunderUtcMs">) {
  const inStrip = thunderUtcMs.filter((at) => at >= hours[0]!.startUtcMs && at <= hours.at(-1)!.startUtcMs);
  const { top, foot } = WARMTH;
  const d = hourSpans(inStrip)
    .map(({ fromUtcMs, toUtcMs }) => {
      const [from, to] = [px(x(fromUtcMs)), px(x(toUtcMs))];
      const fence = `M${from} ${top}V${GUSTS.foot}M${to} ${top}V${GUSTS.foot}`;
      return `${fence}M${from} ${top}L${to} ${foot}M${to} ${top}L${from} ${foot}`;
    })
    .join("");
  return d === "" ? null : <path class="strip-thunder" d={d} />;
}
