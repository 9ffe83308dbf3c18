import { instantOf } from "../../site/instant.ts";
import { calendarDay } from "../../site/local-days.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import { tripHarm } from "../choice/trouble.ts";
import type { Deed } from "../deed.ts";
import { totalHarm } from "../harm/course.ts";
import type { PlanContext } from "../plan-context.ts";
import type { Diagnosis } from "../pot-plan.ts";
import { mayBeBlocked } from "../trouble/blocked-hole.ts";
import { confidenceOf } from "./confidence-of.ts";
import { harmFigure } from "./harm-figure.ts";
import { roundTo } from "./round-to.ts";
import { quantilesOf, shareWhere } from "./spread-of.ts";

/** Water in a saucer that is worth bending down for, mL. Chosen by us. */
const STANDS_ML = 20;
/** Share of the harm of wet roots that an emptied saucer takes away. Chosen by us. */
const SAUCER_TAKES_FRAC = 0.6;
/** Trouble of emptying it, in trips. Chosen by us. */
export const SAUCER_TRIPS = 0.1;
/** Harm of a hole that stays blocked, and of rot that goes unseen. Chosen by us: a pot in ten is lost by it. */
const UNSEEN_HARM = 0.1;
/** Share of a diagnosis from which the roots are to be looked at. Chosen by us. */
const LIKELY_ROT_FRAC = 0.5;

/** Empty the saucer when water stands in it in most of the cloud, and keeps the base wet to the plant's harm. */
export function saucerDeed(context: PlanContext, { now, here }: PotStudy): Deed | null {
  const standing = { values: now.cloud.saucerMl, weightFrac: now.cloud.weightFrac };
  const standsMl = quantilesOf(standing, [0.5])[0]!;
  if (standsMl < STANDS_ML) return null;
  const wet = totalHarm({ byDay: here.wet["wet-roots"] }) + totalHarm({ byDay: here.wet["wet-cold"] });
  const saves = SAUCER_TAKES_FRAC * wet;
  if (saves <= SAUCER_TRIPS * tripHarm(context.settings)) return null;
  return {
    action: "empty-saucer",
    ...byEndOfToday(context),
    reason: { code: "saucer-full", numbers: { standsMl: roundTo(standsMl, 10) } },
    harmAvoided: harmFigure(saves),
    confidence: confidenceOf(shareWhere(standing, (waterMl) => waterMl >= STANDS_ML / 2)),
  };
}

/** Clear the hole when the pot was found wetter than any course of weather and can explains. */
export function holeDeed(context: PlanContext, { now }: PotStudy): Deed | null {
  if (!mayBeBlocked(now, context.nowUtcMs)) return null;
  return {
    action: "clear-hole",
    ...byEndOfToday(context),
    reason: { code: "stays-wet", numbers: {} },
    harmAvoided: harmFigure(UNSEEN_HARM / 2),
    confidence: confidenceOf(0.6),
  };
}

/** Look at the roots when what the grower saw most likely comes from rot. */
export function rootsDeed(context: PlanContext, seen: readonly Diagnosis[]): Deed | null {
  for (const { causes, notedAt } of seen) {
    const rotFrac = causes
      .filter(({ code }) => code === "wet-roots" || code === "cold-wet-rot")
      .reduce((sum, { shareFrac }) => sum + shareFrac, 0);
    if (rotFrac < LIKELY_ROT_FRAC) continue;
    const notedDay = calendarDay(Date.parse(notedAt), context.site.zone);
    return {
      action: "look-at-roots",
      ...byEndOfToday(context),
      reason: { code: "trouble-seen", numbers: { notedDay, rotFrac: roundTo(rotFrac, 0.01) } },
      harmAvoided: harmFigure(UNSEEN_HARM * rotFrac),
      confidence: confidenceOf(rotFrac),
    };
  }
  return null;
}

/** Before the last working hour of today is over; nothing outdoors in a thunder hour. */
export function byEndOfToday({ days, startUtcMs, nowUtcMs }: PlanContext): Pick<Deed, "from" | "by"> {
  const hours = days[0]!.workHours;
  const first = hours[0];
  if (first === undefined) return {};
  let last = first;
  while (hours.includes(last + 1)) last++;
  return {
    from: instantOf(Math.max(nowUtcMs, startUtcMs + first * HOUR_MS)),
    by: instantOf(startUtcMs + (last + 1) * HOUR_MS),
  };
}
