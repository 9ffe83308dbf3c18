import { type ChosenAid, chooseAids } from "../aid/choose-aids.ts";
import { harmLeftOver } from "../aid/left-over.ts";
import { carryInSpan } from "../choice/carry-hours.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { Settled } from "../choice/settle-pots.ts";
import type { HarmByTerm } from "../harm/term.ts";
import type { Deed } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import { carryReason } from "./carry-reason.ts";
import { confidenceOf } from "./confidence-of.ts";
import { harmFigure } from "./harm-figure.ts";
import { spanOfDeed } from "./notice.ts";

/** Share of a term's worst day from which a day belongs to the danger that an aid is for. Chosen by us. */
const BELONGS_FRAC = 0.2;

/** Plan days that this morning's aids are for; a cover is put on in a minute, so later days can wait for their own brief. */
const SOON_DAYS = 2;

/** What can be done for a pot where it stands, against the harm that no carry takes away. */
export function aidDeeds(context: PlanContext, study: PotStudy, settled: Settled): Deed[] {
  if (context.hourCount === 0) return [];
  const leftOver = harmLeftOver(context, study, settled);
  const soon = chooseAids(
    context,
    study,
    overDays(leftOver, (d) => d < SOON_DAYS),
  );
  const later = chooseAids(
    context,
    study,
    overDays(leftOver, (d) => d >= SOON_DAYS),
  ).filter(({ aid }) => !soon.some((other) => other.aid === aid));
  return [
    ...soon.map((aid) => ({ ...aid, lastDay: SOON_DAYS })),
    ...later.map((aid) => ({ ...aid, lastDay: context.days.length })),
  ].flatMap((aid) => {
    const deed = aidDeed(context, { study, leftOver, ...aid });
    return deed === null ? [] : [deed];
  });
}

function overDays(harm: HarmByTerm, counts: (d: number) => boolean): HarmByTerm {
  return Object.fromEntries(
    Object.entries(harm).map(([term, byDay]) => [term, byDay.map((value, d) => (counts(d) ? value : 0))]),
  );
}

/** From the first day that belongs to the danger, until it pauses; what is worst before `lastDay` sets what belongs. */
function aidDeed(
  context: PlanContext,
  input: ChosenAid & { study: PotStudy; leftOver: HarmByTerm; lastDay: number },
): Deed | null {
  const { study, aid, saves, term, lastDay } = input;
  const byDay = input.leftOver[term]!;
  const worst = Math.max(...byDay.slice(0, lastDay));
  const belongs = (harm: number | undefined) => harm !== undefined && harm >= BELONGS_FRAC * worst;
  const fromDay = byDay.findIndex(belongs);
  let toDay = fromDay + 1;
  while (belongs(byDay[toDay])) toDay++;
  const span = carryInSpan(context, {
    stander: study.stander,
    homeAt: study.home.at,
    day: fromDay,
    terms: [term],
  });
  if (span === null) return null;
  const { reason, shareFrac } = carryReason(context, {
    study,
    term,
    leg: { fromDay, toDay },
    keepsRainOff: true,
  });
  return {
    action: aid.action,
    ...spanOfDeed(context, span),
    until: context.days[toDay - 1]!.day,
    reason,
    harmAvoided: harmFigure(saves),
    confidence: confidenceOf(shareFrac),
  };
}
