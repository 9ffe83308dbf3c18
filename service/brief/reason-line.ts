import type { Reason } from "../../core/plan/deed.ts";
import type { Arguments } from "../words/words.ts";
import type { Naming } from "./naming.ts";

/** The reason in one sentence with its figures; without them where the plan could not give them all. */
export function reasonLine(reason: Reason, naming: Naming): string {
  const { words } = naming;
  const spoken = reasonArguments(reason, naming);
  if (isAhead(reason)) return words.say(`reason.${reason.code}.soon`, spoken);
  if (isNearTipping(reason)) return words.say("reason.gusts.near", spoken);
  if (isLaterNight(reason)) return words.say("reason.cold-night.later", spoken);
  const why = whyStillDry(reason);
  if (why !== null) return words.say(`reason.freshly-planted-dry.${why}`, spoken);
  return words.trySay(`reason.${reason.code}`, spoken) ?? words.say(`reason.${reason.code}.bare`, spoken);
}

/** The reason without figures. */
export function reasonInShort(reason: Reason, naming: Naming): string {
  const { words } = naming;
  if (isAhead(reason) && reason.code === "at-refill-point")
    return words.say("reason.at-refill-point.soon.bare");
  return words.say(`reason.${reason.code}.bare`, reasonArguments(reason, naming));
}

/** Watered before it has come down to its refill point, since it may do so before the next round. */
function isAhead(reason: Reason): reason is Reason & { code: "at-refill-point" | "rain-does-not-reach" } {
  const { leftFrac, refillFrac } = reason.numbers;
  return (
    (reason.code === "at-refill-point" || reason.code === "rain-does-not-reach") &&
    typeof leftFrac === "number" &&
    typeof refillFrac === "number" &&
    leftFrac > refillFrac
  );
}

/** Gusts below what it stands up to: only a stronger one than forecast pushes it over. */
function isNearTipping({ code, numbers: { gustMPerS, limitMPerS } }: Reason): boolean {
  return (
    code === "gusts" &&
    typeof gustMPerS === "number" &&
    typeof limitMPerS === "number" &&
    gustMPerS < limitMPerS
  );
}

/** Cold of a night that is not the one after the deed: which one is told, as tonight may be mild. */
function isLaterNight({ code, numbers }: Reason): boolean {
  return code === "cold-night" && numbers.coldDay !== undefined;
}

/** What moved the end of the dry wait after planting; null when nothing did. */
function whyStillDry({ code, numbers: { soakedDay, slowedBy, untilDay } }: Reason): "soaked" | "cool" | null {
  if (code !== "freshly-planted-dry" || untilDay === undefined) return null;
  if (soakedDay !== undefined) return "soaked";
  return slowedBy === undefined ? null : "cool";
}

/** Figures of a reason: instants and spots become names, everything else goes to the catalogue as it is. */
function reasonArguments(reason: Reason, naming: Naming): Arguments {
  // Older plans do not say whether the middle of the cloud is below a line or its cold end alone.
  return Object.fromEntries(
    Object.entries({ sure: "yes", ...reason.numbers }).map(([name, value]) => {
      if (typeof value !== "string") return [name, value];
      if (name.endsWith("SpotId")) return [name, naming.spotName(value)];
      if (name.endsWith("At")) return [name, naming.when(value)];
      return [name, value];
    }),
  );
}
