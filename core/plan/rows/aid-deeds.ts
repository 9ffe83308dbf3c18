import { airlessShareFrac } from "../aid/airless.ts";
import { type AidDays, type ChosenAid, chooseAids, isInstead } from "../aid/choose-aids.ts";
import { type LeftOver, leftOver } from "../aid/left-over.ts";
import { carryInSpan } from "../choice/carry-hours.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { Settled } from "../choice/settle-pots.ts";
import type { Deed } from "../deed.ts";
import type { PlanContext } from "../plan-context.ts";
import { carryReason } from "./carry-reason.ts";
import { confidenceOf } from "./confidence-of.ts";
import { harmFigure } from "./harm-figure.ts";
import { spanOfDeed } from "./notice.ts";
import { byEndOfToday } from "./small-deeds.ts";

/** Share of a term's worst day from which a day belongs to the danger that an aid is for. Chosen by us. */
const BELONGS_FRAC = 0.2;

/** Plan days that this morning's aids are for; a cover is put on in a minute, so later days can wait for their own brief. */
const SOON_DAYS = 2;

/** What can be done for a pot where it stands, against the harm that no carry takes away. */
export function aidDeeds(context: PlanContext, study: PotStudy, settled: Settled): Deed[] {
  if (context.hourCount === 0) return [];
  const left = leftOver(context, study, settled);
  const lastDay = context.days.length;
  const chosenFor = (days: AidDays) =>
    chooseAids(context, { study, left, days }).map((aid) => ({ ...aid, lastDay: days.toDay }));
  const soon = chosenFor({ fromDay: 0, toDay: SOON_DAYS });
  // What has soaked in is drained now or not at all.
  const later = chosenFor({ fromDay: SOON_DAYS, toDay: lastDay }).filter(
    ({ aid, purpose }) => purpose !== "soaked" && !soon.some((other) => isInstead(aid, other.aid)),
  );
  return [...soon, ...later].flatMap((aid) => {
    const deed = aidDeed(context, { study, left, ...aid });
    return deed === null ? [] : [deed];
  });
}

interface AidForPot extends ChosenAid {
  readonly study: PotStudy;
  readonly left: LeftOver;
  readonly lastDay: number;
}

/** From the first day that belongs to the danger, until it pauses; what is worst before `lastDay` sets what belongs. */
function aidDeed(context: PlanContext, input: AidForPot): Deed | null {
  const { study, aid, saves, purpose, lastDay } = input;
  if (purpose === "soaked") return drainDeed(context, input);
  const byDay = input.left.harm[purpose]!;
  const worst = Math.max(...byDay.slice(0, lastDay));
  const belongs = (harm: number | undefined) => harm !== undefined && harm >= BELONGS_FRAC * worst;
  const fromDay = byDay.findIndex(belongs);
  let toDay = fromDay + 1;
  while (belongs(byDay[toDay])) toDay++;
  const span = carryInSpan(context, {
    stander: study.stander,
    homeAt: study.home.at,
    day: fromDay,
    terms: [purpose],
  });
  if (span === null) return null;
  const { reason, shareFrac } = carryReason(context, {
    study,
    term: purpose,
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
    ...handsFor(aid, study),
  };
}

/** Today, until the base would have had air again by itself. */
function drainDeed(context: PlanContext, { study, aid, saves, left }: AidForPot): Deed {
  const { now, outlook } = study;
  const lastDay = left.soaked!.reduce((last, harm, d) => (harm > 0 ? d : last), 0);
  const standsHours = now.values.wetBaseHours;
  return {
    action: aid.action,
    ...byEndOfToday(context),
    until: context.days[lastDay]!.day,
    reason: {
      code: "base-without-air",
      numbers: { wetBaseHours: Math.round(outlook.wetBaseHours.mid), standsHours },
    },
    harmAvoided: harmFigure(saves),
    confidence: confidenceOf(airlessShareFrac(now)),
    ...handsFor(aid, study),
  };
}

/** A pot that is leant is lifted on one side. */
function handsFor({ action }: ChosenAid["aid"], { lift }: PotStudy): Pick<Deed, "lift"> {
  return action === "tilt" ? { lift } : {};
}
