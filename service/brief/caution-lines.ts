import type { Caution } from "../../core/plan/plan.ts";
import { calendarDay } from "../../core/site/local-days.ts";
import type { BriefCaution } from "./brief-value.ts";
import type { Naming } from "./naming.ts";

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
      span: spanText(caution, naming),
    }),
  }));
}

const NAMED_AT_MOST = 4;

function potsText(potIds: readonly string[], { words, potName }: Naming): string {
  const named = potIds.slice(0, NAMED_AT_MOST).map(potName);
  const restCount = potIds.length - named.length;
  return words.list(restCount > 0 ? [...named, words.say("caution.more-pots", { restCount })] : named);
}

/** Hours from to; of a span within another day the day is said once. */
function spanText(caution: Caution, { words, when, plan }: Naming): string {
  if (caution.from === undefined || caution.to === undefined) return words.say("caution.span.unknown");
  const fromUtcMs = Date.parse(caution.from);
  const day = calendarDay(fromUtcMs, plan.zone);
  const isOneDay = day === calendarDay(Date.parse(caution.to) - 1, plan.zone);
  const from = isOneDay ? words.clock(fromUtcMs, plan.zone) : when(caution.from);
  return words.say("caution.span", { from, to: when(caution.to) });
}
