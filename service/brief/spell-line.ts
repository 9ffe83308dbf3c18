import type { SkySpell } from "../../core/plan/plan.ts";
import { rainRate } from "../../core/weather/rain-rate.ts";
import type { Naming } from "./naming.ts";
import { spanText } from "./span-text.ts";

/** A spell ahead in one sentence: "Wet from 14:00 tomorrow to 06:00 on Thursday: 20 mm to 62 mm, 88% sure." */
export function spellLine(spell: SkySpell, naming: Naming): string {
  const { words } = naming;
  const peak = spell.numbers.peakMmPerH;
  return words.say(`spell.${spell.kind}`, {
    ...spell.numbers,
    shareFrac: spell.shareFrac,
    span: spellSpan(spell, naming),
    rate: peak === undefined ? "" : words.say(`spell.rate.${rainRate(peak)}`),
  });
}

const HOUR_MS = 3_600_000;

function spellSpan({ from, to }: SkySpell, naming: Naming): string {
  const { words, plan, when } = naming;
  const hasBegun = Date.parse(from) <= Date.parse(plan.issuedAt) + HOUR_MS;
  if (to === undefined)
    return words.say(hasBegun ? "spell.span.all" : "spell.span.open", { from: when(from) });
  return hasBegun ? words.say("spell.span.now", { to: when(to) }) : spanText({ from, to }, naming);
}
