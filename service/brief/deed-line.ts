import type { Deed, PotPlan } from "../../core/plan/plan.ts";
import type { BriefDeed } from "./brief-value.ts";
import type { Naming } from "./naming.ts";
import { reasonLine } from "./reason-line.ts";

/** One deed of one pot in words. */
export function deedLine(input: { potPlan: PotPlan; deed: Deed; naming: Naming }): BriefDeed {
  const { potPlan, deed, naming } = input;
  const { words } = naming;
  const parts = {
    amount: amountText(deed, potPlan, naming),
    place:
      deed.toSpotId === undefined ? null : words.say("deed.to", { place: naming.spotName(deed.toSpotId) }),
    hour: hourText(deed, naming),
  };
  const verb = words.say(`verb.${deed.action}`);
  const pot = naming.potName(potPlan.potId);
  const due = deed.by ?? deed.from;
  return {
    potId: potPlan.potId,
    action: deed.action,
    verb,
    pot,
    ...parts,
    figure: deed.amountMl === undefined ? null : (words.figure("waterMl", deed.amountMl) ?? null),
    amountMl: deed.amountMl ?? null,
    untilItRunsThrough: deed.untilItRunsThrough ?? false,
    toSpotId: deed.toSpotId ?? null,
    dueUtcMs: due === undefined ? null : Date.parse(due),
    reason: reasonLine(deed.reason, naming),
    confidence: words.say(`confidence.${deed.confidence.word}`),
    notes: liftNotes(deed, naming),
    sentence: words.say("deed.sentence", {
      verb,
      details: [pot, parts.amount, parts.place, parts.hour].filter((part) => part !== null).join(", "),
    }),
  };
}

function amountText(deed: Deed, potPlan: PotPlan, { words }: Naming): string | null {
  if (deed.action !== "water" && deed.action !== "soak-slowly") return null;
  const waterMl = deed.amountMl;
  if (deed.untilItRunsThrough) {
    return waterMl === undefined ? words.say("deed.through") : words.say("deed.amount-through", { waterMl });
  }
  if (waterMl === undefined) return null;
  return words.say(potPlan.count > 1 ? "deed.amount-each" : "deed.amount", { waterMl });
}

function hourText(deed: Deed, { words, when }: Naming): string | null {
  if (deed.from !== undefined && deed.by !== undefined) {
    return words.say("deed.between", { from: when(deed.from), by: when(deed.by) });
  }
  if (deed.by !== undefined) return words.say("deed.by", { time: when(deed.by) });
  return deed.from === undefined ? null : words.say("deed.from", { time: when(deed.from) });
}

function liftNotes(deed: Deed, { words }: Naming): string[] {
  if (!deed.lift || deed.lift.hands === "one") return [];
  return [words.say(`deed.lift.${deed.lift.hands}`, { massKg: deed.lift.massKg })];
}
