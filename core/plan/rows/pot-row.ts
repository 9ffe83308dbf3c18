import type { JournalEntry } from "../../journal/entry.ts";
import { instantOf } from "../../site/instant.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { Settled } from "../choice/settle-pots.ts";
import { tripHarm } from "../choice/trouble.ts";
import type { Deed } from "../deed.ts";
import type { PlanContext } from "../plan-context.ts";
import type { Diagnosis, PotPlan } from "../pot-plan.ts";
import { diagnose } from "../trouble/diagnose.ts";
import { doubtedOf } from "../trouble/doubted.ts";
import { aidDeeds } from "./aid-deeds.ts";
import { carryDeeds } from "./carry-deeds.ts";
import { withMinutes } from "./deed-minutes.ts";
import { dryDeed } from "./dry-deed.ts";
import { holdsOf } from "./holds.ts";
import { idleDeed } from "./idle-deed.ts";
import { milestonesOf } from "./milestones.ts";
import { notCarried } from "./not-carried.ts";
import { NOTICE_H } from "./notice.ts";
import { holeDeed, rootsDeed, saucerDeed } from "./small-deeds.ts";
import { sunStepsDeed } from "./sun-steps.ts";
import { waterDeed } from "./water-deed.ts";

/** What one pot's line is made from. */
export interface Line {
  readonly study: PotStudy;
  readonly settled: Settled;
  /** Settled entries of this pot. */
  readonly entries: readonly JournalEntry[];
}

/** One pot's line of the plan: its first deed, what follows, what should wait, and how it would fare if left alone. */
export function potRow(context: PlanContext, { study, settled, entries }: Line): PotPlan {
  const seen = diagnose({ study, entries, nowUtcMs: context.nowUtcMs });
  const left = notCarried(context, study, settled);
  const stays = (deed: Deed) => (left === null ? deed : { ...deed, notCarried: left });
  const deeds = deedsOf(context, { study, settled, seen, stays });
  const isSoon = deeds[0] !== undefined && begins(deeds[0]) < noticeEnds(context);
  const [first, ...then] = isSoon ? deeds : [stays(idleDeed(context, study, settled.water)), ...deeds];
  const { pot, spotId } = study.now;
  const holds = holdsOf(context, study, seen);
  const milestones = milestonesOf(context, study);
  const doubted = doubtedOf(study.now, context.nowUtcMs);
  return {
    ...first!,
    potId: pot.id,
    count: pot.count ?? 1,
    spotId,
    then,
    ...(holds.length > 0 ? { holds } : {}),
    ...(milestones.length > 0 ? { milestones } : {}),
    ...(seen.length > 0 ? { seen } : {}),
    ...(doubted.length > 0 ? { doubted } : {}),
    outlook: {
      ...study.outlook,
      ...(settled.water.againDays === undefined ? {} : { againDays: settled.water.againDays }),
      lift: study.lift,
    },
  };
}

interface Told extends Omit<Line, "entries"> {
  readonly seen: readonly Diagnosis[];
  /** Adds why the pot is not carried instead, where a carry would save more. */
  readonly stays: (deed: Deed) => Deed;
}

/** All that is to be done, what is due first standing first. */
function deedsOf(context: PlanContext, { study, settled, seen, stays }: Told): Deed[] {
  const { chosen, water } = settled;
  const isWorthTelling = (deed: Deed) => deed.confidence.shareFrac >= tellingShare(context, deed);
  const aids = aidDeeds(context, study, settled).filter(isWorthTelling).map(stays);
  const carries = chosen === null ? [] : untilUnlikely(carryDeeds(context, study, chosen), isWorthTelling);
  const sunSteps = sunStepsDeed(context, study, carries[0]);
  return [
    waterDeed(context, study, water),
    dryDeed(context, study, water),
    saucerDeed(context, study),
    holeDeed(context, study),
    rootsDeed(context, seen),
    ...carries,
    sunSteps,
    ...aids.filter(({ action }) => sunSteps?.action !== action),
  ]
    .filter((deed) => deed !== null)
    .map((deed) => withMinutes({ study, settled }, deed))
    .sort(byTime);
}

/**
 * Share from which a deed is told: of today a carry at any, an aid from one chance in ten unless much hangs on it; of
 * tomorrow not the least likely, of later days what is about even; the rest is left to the brief of its day, which
 * knows more. Chosen by us.
 */
function tellingShare(context: PlanContext, deed: Deed): number {
  const tomorrow = context.days[1]?.workHours[0] ?? context.hourCount;
  if (begins(deed) >= instantOf(context.startUtcMs + tomorrow * HOUR_MS)) {
    return begins(deed) < noticeEnds(context) ? 0.15 : 0.4;
  }
  const isCarry = deed.action === "carry-in" || deed.action === "carry-out";
  return isCarry || deed.harmAvoided >= MUCH_TRIPS * tripHarm(context.settings) ? 0 : 0.1;
}

/** Harm, in trips, for which a small chance is told too. */
const MUCH_TRIPS = 5;

/** Carries up to the first that need not be told yet: what comes after it depends on it. */
function untilUnlikely(carries: readonly Deed[], isWorthTelling: (deed: Deed) => boolean): Deed[] {
  const first = carries.findIndex((deed) => !isWorthTelling(deed));
  return first < 0 ? [...carries] : carries.slice(0, first);
}

function noticeEnds({ startUtcMs }: PlanContext): string {
  return instantOf(startUtcMs + NOTICE_H * HOUR_MS);
}

function begins(deed: Deed): string {
  return deed.from ?? "";
}

function byTime(a: Deed, b: Deed): number {
  const [dueA, dueB] = [dueOf(a), dueOf(b)];
  return dueA < dueB ? -1 : dueA > dueB ? 1 : 0;
}

/** What is due first stands first; keeping dry has no hour and comes before all. */
function dueOf(deed: Deed): string {
  return deed.action === "keep-dry" ? "" : (deed.by ?? deed.from ?? "");
}
