import { scaleLinear } from "d3-scale";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import type { Words } from "../../words/words.ts";
import type { NextHour } from "./next-hours.ts";

// Drawn as wide as a phone, so that the figures keep their size there. All in drawn units.
export const WIDTH = 360;
export const LEFT = 6;
export const RIGHT = WIDTH - 6;
/** Each row has a line of writing of its own above it, and warmth one below too. */
export const WARMTH = { top: 18, foot: 81 };
export const RAIN = { top: 97, foot: 128 };
export const GUSTS = { top: 146, foot: 163 };
/** Width of a letter at the size of the figures, for keeping labels apart. */
export const LETTER = 7;

/** The hours of a strip and where they stand on it. */
export interface Plot {
  readonly hours: readonly NextHour[];
  readonly zone: string;
  readonly words: Words;
  x(utcMs: number): number;
}

/** From the beginning of the first hour to the end of the last. */
export function hourScale(hours: readonly [NextHour, ...NextHour[]]): Plot["x"] {
  return scaleLinear([hours[0].startUtcMs, hours.at(-1)!.startUtcMs + HOUR_MS], [LEFT, RIGHT]);
}

/** Text centred on a place, turned inward where half of it would run off the strip. */
export function beside(atX: number, text: string): { x: number; "text-anchor": "start" | "middle" | "end" } {
  const half = (text.length * LETTER) / 2;
  if (atX + half > WIDTH) return { x: px(Math.min(atX, RIGHT)), "text-anchor": "end" };
  if (atX < half) return { x: px(Math.max(atX, LEFT)), "text-anchor": "start" };
  return { x: px(atX), "text-anchor": "middle" };
}

export function px(value: number): number {
  return Math.round(value * 10) / 10;
}
