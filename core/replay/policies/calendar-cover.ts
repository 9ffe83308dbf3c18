import type { Stage } from "../world/known-pot.ts";
import { halfMonthOf } from "./place-normals.ts";
import type { MorningView, PotView } from "./policy.ts";

/** Degrees over a plant's line of damage that the half month's mean minimum has to reach before it stands outside. */
const MARGIN_C = 6;

/**
 * The spot that a calendar hung in the potting shed names: indoors in the half months whose nights are usually too cold
 * for the plant, at home in the others. Null where it stands there already.
 */
export function calendarSpot(stage: Stage, view: MorningView, pot: PotView): number | null {
  const wanted = isColdTime(view, pot) ? roomOf(stage, pot) : pot.known.homeSpot;
  return wanted === pot.spot ? null : wanted;
}

export function isColdTime(
  { normals, date }: Pick<MorningView, "normals" | "date">,
  pot: Pick<PotView, "known">,
): boolean {
  return normals.meanMinimumC[halfMonthOf(date)]! < pot.known.values.damageC + MARGIN_C;
}

/** The indoor spot, else home. */
export function roomOf({ spots }: Stage, pot: PotView): number {
  const room = spots.findIndex(({ kind }) => kind === "indoors");
  return room < 0 ? pot.known.homeSpot : room;
}

/** The roofed spot, else home. */
export function roofOf({ spots }: Stage, pot: PotView): number {
  const roof = spots.findIndex(({ kind }) => kind === "roofed");
  return roof < 0 ? pot.known.homeSpot : roof;
}
