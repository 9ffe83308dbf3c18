import type { StandIn } from "../plan/plan.ts";

/** Hours after which a forecast is no longer today's, and after which two days of it are spent. Chosen by us. */
const AGEING_HOURS = 12;
const OLD_HOURS = 48;
/** Fewer known hours ahead than a day leave nothing to plan on. */
const LEAST_KNOWN_HOURS = 24;
/** A stand-in for fewer hours than this does not count. Chosen by us. */
const NOTABLE_SHARE_FRAC = 0.1;

/** How far the weather can be trusted: one word from its age, its reach and what stood in. */
export function weatherTrust(of: {
  standIns: readonly StandIn[];
  knownHours: number;
  ageHours: number;
}): "full" | "reduced" | "poor" {
  const notable = of.standIns.filter((one) => one.shareOfHoursFrac >= NOTABLE_SHARE_FRAC);
  const invented = notable.some((one) => one.quantity === "whole-forecast");
  if (invented || of.knownHours < LEAST_KNOWN_HOURS || of.ageHours >= OLD_HOURS) return "poor";
  return notable.length > 0 || of.ageHours >= AGEING_HOURS ? "reduced" : "full";
}
