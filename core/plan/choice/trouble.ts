import type { Spot } from "../../site/spot.ts";
import type { Lift } from "../deed.ts";
import type { Settings } from "../settings.ts";

/** Time of a trip of 10 kg over level ground: to lift, walk, open, set down and come back. Chosen by us. */
export const MINUTES_PER_TRIP = 2.5;
/** Trips of a 10 kg pot over level ground that a carry of a weightless pot is worth: walking, opening, setting down. */
const LEAST_TRIPS = 0.25;
/** How much further a carry is felt. Chosen by us: a few steps is half a walk, stairs are two and a half. */
const WAY_FACTOR = { "few-steps": 0.5, "same-level": 1, stairs: 2.5 } as const;
/** A second pair of hands has to be found, a trolley fetched. Chosen by us. */
const HANDS_FACTOR = { one: 1, "two-people": 2, trolley: 2.5 } as const;
/** Walking to a pot with the can, and each litre in it, in trips. Chosen by us: a ten-litre can is half a carry. */
const POUR_TRIPS = 0.15;
const POUR_TRIPS_PER_L = 0.05;

/** One carry between two spots, in trips of a 10 kg pot over level ground; the longer way of the two counts. */
export function carryTrips(input: { lift: Lift; from: Spot; to: Spot }): number {
  const ways = [input.from, input.to].map((spot) => WAY_FACTOR[spot.carry ?? "same-level"]);
  const load = Math.max(LEAST_TRIPS, input.lift.massKg / 10);
  return load * Math.max(...ways) * HANDS_FACTOR[input.lift.hands];
}

/** Whether a carry can be advised at all: no trolley goes up stairs. */
export function canBeCarried({ lift, from, to }: { lift: Lift; from: Spot; to: Spot }): boolean {
  return lift.hands !== "trolley" || (from.carry !== "stairs" && to.carry !== "stairs");
}

/** Harm that one trip must save, as the grower set it. */
export function tripHarm({ tripWorth }: Pick<Settings, "tripWorth">): number {
  return tripWorth / 1000;
}

/** Watering one pot once, in trips; without an amount, the walk alone. */
export function pourTrips(waterMl = 0): number {
  return POUR_TRIPS + (POUR_TRIPS_PER_L * Math.max(0, waterMl)) / 1000;
}

/** The same in harm. */
export function pourHarm(settings: Pick<Settings, "tripWorth">, waterMl = 0): number {
  return pourTrips(waterMl) * tripHarm(settings);
}
