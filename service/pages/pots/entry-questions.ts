import type { EntryBody } from "../../../core/journal/entry.ts";
import type { Problem } from "../../../core/problem.ts";
import type { Typed } from "../forms/form-problems.ts";
import type { PotStand } from "./pot-stand.ts";

/** A weight this many times above or below what the pot can weigh is most likely a slip of the keys. Chosen by us. */
const FAR_OFF = 3;

/** What is possible but worth asking about before it is reckoned with; nothing once it was confirmed. */
export function entryQuestions(
  body: EntryBody,
  { typed, stand }: { typed: Typed; stand: PotStand | undefined },
): Problem[] {
  // Nobody sits before a form that waited on a device: it is taken as it is.
  if (typed.entrySure === "yes" || typed.happenedAtUtcMs !== undefined || !stand) return [];
  if (body.kind === "weighed") return weightQuestions(body.massKg, stand);
  if (body.kind !== "watered" || body.given.kind === "ran-through") return [];
  const { given } = body;
  return given.kind === "measured"
    ? pouredQuestions(given.waterMl, stand)
    : [...pouredQuestions(given.pouredMl, stand), ...drainedQuestions(given)];
}

function pouredQuestions(pouredMl: number, { inVessel }: PotStand): Problem[] {
  const volumeMl = inVessel?.hold.volumeMl;
  if (volumeMl === undefined || pouredMl <= volumeMl) return [];
  return [{ code: "poured-more-than-pot", path: ["waterMl"], data: { volumeMl } }];
}

function drainedQuestions({ pouredMl, drainedMl }: { pouredMl: number; drainedMl: number }): Problem[] {
  return drainedMl > pouredMl ? [{ code: "ran-out-more-than-poured", path: ["drainedMl"] }] : [];
}

function weightQuestions(massKg: number, { inVessel, potPlan }: PotStand): Problem[] {
  const hold = inVessel?.hold;
  const known = [hold?.dryMassKg, hold?.soakedMassKg, potPlan?.outlook.massKg].filter(
    (kg): kg is number => kg !== undefined,
  );
  if (known.length === 0) return [];
  const [lowKg, highKg] = [Math.min(...known), Math.max(...known)];
  if (massKg >= lowKg / FAR_OFF && massKg <= highKg * FAR_OFF) return [];
  return [{ code: "weight-far-off", path: ["massKg"], data: { lowKg, highKg } }];
}
