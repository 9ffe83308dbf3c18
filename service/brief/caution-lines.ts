import type { Caution } from "../../core/plan/plan.ts";
import { calendarDay } from "../../core/site/local-days.ts";
import type { BriefCaution } from "./brief-value.ts";
import { groupedBy } from "./grouped-by.ts";
import type { Naming } from "./naming.ts";
import { potsText } from "./pots-text.ts";
import { spanText } from "./span-text.ts";

const URGENT: ReadonlySet<Caution["code"]> = new Set(["thunder", "heat", "old-weather"]);

/** Only what binds the day of the brief itself; thunder of Thursday does not shout on Monday. */
function isUrgent({ code, from }: Caution, { plan }: Naming): boolean {
  return URGENT.has(code) && (from === undefined || calendarDay(Date.parse(from), plan.zone) <= plan.forDay);
}

/** The cautions of a plan in words; what concerns pots names them. */
export function cautionLines(cautions: readonly Caution[], naming: Naming): BriefCaution[] {
  return cautions.map((caution) => ({
    code: caution.code,
    isUrgent: isUrgent(caution, naming),
    potIds: caution.potIds,
    sentence: naming.words.say(`caution.${caution.code}`, {
      ...caution.numbers,
      pots: potsText(caution.potIds, naming),
      span: cautionSpan(caution, naming),
      help: caution.code === "no-room" ? helpText(caution, naming) : "",
    }),
  }));
}

function cautionSpan({ from, to }: Caution, naming: Naming): string {
  if (from === undefined || to === undefined) return naming.words.say("caution.span.unknown");
  return spanText({ from, to }, naming);
}

const HELPS = ["top-cover", "tilt", "brace", "shade"] as const;

/** What helps pots for which there is no room: what the plan asks for where they stand, else each other and a wall. */
function helpText({ potIds }: Caution, naming: Naming): string {
  const { plan, words } = naming;
  const rows = plan.pots.filter(({ potId }) => potIds.includes(potId));
  const byHelp = groupedBy(rows, (row) => {
    const actions = [row.action, ...row.then.map(({ action }) => action)];
    return HELPS.find((help) => actions.includes(help)) ?? "wall";
  });
  const deeds = [...byHelp].map(([help, helped]) => {
    const ids = helped.map(({ potId }) => potId);
    return words.say(`no-room.${help}`, { pots: potsText(ids, naming) });
  });
  return deeds.length === 0 ? "" : words.say("no-room.deeds", { deeds: words.list(deeds) });
}
