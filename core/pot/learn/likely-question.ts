import type { Observed } from "./observed.ts";

/** What to ask the grower when an observation does not fit. */
export type LikelyQuestion =
  | "mix-changed"
  | "hole-blocked"
  | "water-not-noted"
  | "place-not-noted"
  | "ran-past-dry-mix"
  | "another-pot"
  | "look-closer";

/** The likeliest reason that fits which way the observation is off. */
export function likelyQuestion(on: Observed, off: { seen: number; expected: number }): LikelyQuestion {
  const { body } = on.entry;
  if (body.kind === "weighed") return aboutMass(on, off);
  if (body.kind === "watered") return off.seen < off.expected ? aboutLittleRoom(on) : "mix-changed";
  return "look-closer";
}

function aboutMass(on: Observed, off: { seen: number; expected: number }): LikelyQuestion {
  const { dryMassKg, soakedMassKg } = on.inVessel.hold;
  const tareKg = on.particles.tareKg.reduce((sum, kg) => sum + kg, 0) / on.particles.size;
  if (off.seen < 0.7 * dryMassKg) return "another-pot";
  if (off.seen > 1.15 * (soakedMassKg + tareKg)) return "mix-changed";
  if (off.seen > off.expected)
    return off.seen > on.inVessel.hold.drainedMassKg + tareKg ? "hole-blocked" : "water-not-noted";
  return off.seen < dryMassKg + tareKg ? "mix-changed" : "place-not-noted";
}

/** Less was kept than there should be room for: dry mix let it past, or it had been watered before. */
function aboutLittleRoom(on: Observed): LikelyQuestion {
  return on.inVessel.repellentBelowFrac === null ? "water-not-noted" : "ran-past-dry-mix";
}
