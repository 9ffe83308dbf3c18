import type { PotStudy } from "../choice/pot-study.ts";
import { tripHarm } from "../choice/trouble.ts";
import { tipMPerS } from "../harm/spot-harm.ts";
import type { HarmTerm } from "../harm/term.ts";
import type { PlanContext } from "../plan-context.ts";
import { AIDS, type Aid, type AidedPot } from "./aids.ts";
import type { LeftOver } from "./left-over.ts";

/** What an aid is mostly for: a harm to come, or what the pot has soaked up already. */
export type AidPurpose = HarmTerm | "soaked";

/** An aid worth its trouble: what it saves, and what it is mostly for. */
export interface ChosenAid {
  readonly aid: Aid;
  readonly saves: number;
  readonly purpose: AidPurpose;
}

/** Days that an aid is thought of for: from, and to but not including. */
export interface AidDays {
  readonly fromDay: number;
  readonly toDay: number;
}

/** What an aid must save beyond its trouble before it is asked for, in trips. Chosen by us: rather leave it alone. */
const WORTH_ASKING_TRIPS = 0.25;

/**
 * Aids one after another as long as each saves more than its trouble, the most worthwhile first. Those against the same
 * harm are alternatives: nobody tilts a pot under a cover.
 */
export function chooseAids(
  context: PlanContext,
  { study, left, days }: { study: PotStudy; left: LeftOver; days: AidDays },
): ChosenAid[] {
  const harmOf = harmOver(left, days);
  const trip = tripHarm(context.settings);
  const pot = aidedPot(study, days);
  let open = AIDS.filter((aid) => aid.isPossible(pot));
  const chosen: ChosenAid[] = [];
  for (;;) {
    const best = open
      .map((aid) => ({ aid, ...savingOf(aid, harmOf) }))
      .map((one) => ({ ...one, net: one.saves - one.aid.trips(pot) * trip }))
      .sort((a, b) => b.net - a.net)[0];
    if (best === undefined || best.net <= WORTH_ASKING_TRIPS * trip) return chosen;
    chosen.push({ aid: best.aid, saves: best.saves, purpose: best.purpose });
    open = open.filter((other) => !isInstead(other, best.aid));
  }
}

/** Whether two aids are against the same harm, or are one. */
export function isInstead(aid: Aid, of: Aid): boolean {
  return entriesOf(aid).some(([term]) => term in of.takesFrac);
}

function aidedPot({ lift, stander, here }: PotStudy, { fromDay, toDay }: AidDays): AidedPot {
  return {
    lift,
    rimCm: stander.now.vessel.topCm,
    gustMPerS: Math.max(0, ...here.at.gustMPerS.slice(fromDay, toDay)),
    tipMPerS: tipMPerS(stander),
  };
}

/** Harm by what an aid may be for, over some days. */
function harmOver({ harm, soaked }: LeftOver, { fromDay, toDay }: AidDays): (of: AidPurpose) => number {
  const sum = (byDay: Float64Array | null | undefined) =>
    byDay?.slice(fromDay, toDay).reduce((all, one) => all + one, 0) ?? 0;
  return (of) => sum(of === "soaked" ? soaked : harm[of]);
}

function savingOf(aid: Aid, harmOf: (of: AidPurpose) => number): { saves: number; purpose: AidPurpose } {
  const parts = [
    ...entriesOf(aid).map(([purpose, frac]) => ({ purpose, saves: frac * harmOf(purpose) })),
    { purpose: "soaked" as const, saves: (aid.takesSoakedFrac ?? 0) * harmOf("soaked") },
  ];
  const { purpose } = parts.reduce((a, b) => (b.saves > a.saves ? b : a));
  return { saves: parts.reduce((sum, { saves }) => sum + saves, 0), purpose };
}

function entriesOf({ takesFrac }: Aid): [HarmTerm, number][] {
  return Object.entries(takesFrac) as [HarmTerm, number][];
}
