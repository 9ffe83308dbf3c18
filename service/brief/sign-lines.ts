import type { Diagnosis, PotPlan } from "../../core/plan/pot-plan.ts";
import { calendarDay } from "../../core/site/local-days.ts";
import type { SignLine } from "./brief-value.ts";
import type { Naming } from "./naming.ts";

/** What the grower saw on a pot, read against its state: causes in order, the one look, and what waits until then. */
export function signLines(potPlan: PotPlan, naming: Naming): SignLine[] {
  return (potPlan.seen ?? []).map((seen) => signLine(potPlan, seen, naming));
}

function signLine({ potId }: PotPlan, seen: Diagnosis, { words, plan, potName }: Naming): SignLine {
  const { say } = words;
  const avoid = seen.avoid.map((code) => say(`avoid.${code}`));
  return {
    potId,
    pot: potName(potId),
    seen: say("sign.seen", {
      sign: say(`trouble.${seen.sign}`),
      notedDay: calendarDay(Date.parse(seen.notedAt), plan.zone),
    }),
    causes: say("sign.causes", {
      causeCount: seen.causes.length,
      causes: seen.causes.map((cause) => causeText(cause, words)).join(", "),
    }),
    check: say(`check.${seen.check}`),
    meanwhile: avoid.length === 0 ? null : say("sign.meanwhile", { avoid: words.list(avoid) }),
    notes: mayBeSprayed(seen) ? [say("log.label-law")] : [],
  };
}

function causeText({ code, shareFrac }: Diagnosis["causes"][number], { say }: Naming["words"]): string {
  return say("sign.cause", { cause: say(`cause.${code}`), causeShareFrac: shareFrac });
}

/** Where pests are a likely cause somebody may reach for a bottle. */
function mayBeSprayed({ causes }: Diagnosis): boolean {
  return causes.some(({ code }) => code === "pests");
}
