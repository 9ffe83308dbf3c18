import { HOUR_MS } from "../../../core/weather/weather.ts";
import { GUSTS, LEFT, LETTER, type Plot, px, RIGHT, WIDTH } from "./strip-frame.ts";

/** A deed, or several alike, that falls due at an hour of the strip. */
export interface StripDeed {
  readonly atUtcMs: number;
  readonly text: string;
  /** Said instead where the text finds no room. */
  readonly short: string;
}

/** Baseline of the first row of deeds. */
const TOP = 181;
const ROW = 15;
/** Between a deed's line and its text. */
const GAP = 4;

/** Where the strip ends. */
export function footOf(labels: readonly DeedLabel[]): number {
  const rows = Math.max(0, ...labels.map(({ row }) => row + 1));
  return rows === 0 ? GUSTS.foot + 5 : TOP + (rows - 1) * ROW + 5;
}

/** Each deed below its hour, on a line of its own where it would touch another. */
export function Deeds({ labels }: { labels: readonly DeedLabel[] }) {
  return (
    <>
      {labels.map(({ atX, row }) => (
        <path class="strip-drop" d={`M${px(atX)} ${GUSTS.foot}V${TOP + row * ROW}`} />
      ))}
      {labels.map(({ text, textX, anchor, row }) => (
        <g class="strip-deed">
          <text x={px(textX)} y={TOP + row * ROW} text-anchor={anchor}>
            {text}
          </text>
        </g>
      ))}
    </>
  );
}

/** A deed as it hangs from the strip. */
export interface DeedLabel {
  readonly text: string;
  readonly atX: number;
  readonly textX: number;
  readonly anchor: "start" | "end";
  readonly row: number;
}

type Extent = readonly [number, number];

/** Each label in the first row where it does not touch another. */
export function deedLabels({ deeds, x, hours }: Plot & { deeds: readonly StripDeed[] }): DeedLabel[] {
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
  const textX = isLate ? atX - GAP : atX + GAP;
  const roomPx = isLate ? textX - LEFT : RIGHT - textX;
  const text = deed.text.length * LETTER <= roomPx ? deed.text : deed.short;
  const width = text.length * LETTER;
  return {
    text,
    atX,
    textX,
    anchor: isLate ? "end" : "start",
    extent: isLate ? [textX - width, atX] : [atX, textX + width],
  };
}
