import { instantOf } from "../../site/instant.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { awaitsWateringIn } from "../choice/fresh-leafy.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { WaterChoice } from "../choice/water-choice.ts";
import type { Deed, Reason } from "../deed.ts";
import { refillFracNow } from "../harm/refill-point.ts";
import type { PlanContext } from "../plan-context.ts";
import { foundWetterUtcMs } from "../trouble/found-wetter.ts";
import { coldAhead } from "./cold-ahead.ts";
import { confidenceOf } from "./confidence-of.ts";
import { leftFracNow, rainFigureMm, sumOver } from "./day-figures.ts";
import { harmFigure } from "./harm-figure.ts";
import { roundTo } from "./round-to.ts";
import { quantilesOf } from "./spread-of.ts";

/** Hours within which the morning round is done. Common practice: early, before the heat. */
const ROUND_H = 4;
/** Rain of today, mm, from which a grower asks why the can is still needed. Chosen by us. */
const NOTABLE_RAIN_MM = 2;

/** The can, as it was decided; null when it stays in the shed, or the pot was found wetter than is believed of it. */
export function waterDeed(context: PlanContext, study: PotStudy, choice: WaterChoice): Deed | null {
  if (choice.deed !== "through" && choice.deed !== "part") return null;
  if (foundWetterUtcMs(study.now, context.nowUtcMs) !== null) return null;
  const sheds = shedsWater(study);
  return {
    action: sheds ? "soak-slowly" : "water",
    amountMl: choice.amountMl,
    ...(choice.deed === "through" ? { untilItRunsThrough: true } : {}),
    ...roundOf(context, choice.hour!),
    reason: sheds
      ? { code: "sheds-water", numbers: { leftFrac: leftFracNow(study.now) } }
      : waterReason(context, study, choice),
    harmAvoided: harmFigure(choice.thirstSaved - harmDoneBy(choice)),
    confidence: confidenceOf(choice.rightShareFrac),
  };
}

/** From the first working hour: until the end of the round, or of the working hours before a thunderstorm. */
function roundOf({ days, startUtcMs, nowUtcMs }: PlanContext, fromHour: number) {
  const hours = days[0]!.workHours;
  let last = fromHour;
  while (last < fromHour + ROUND_H - 1 && hours.includes(last + 1)) last++;
  return {
    from: instantOf(Math.max(nowUtcMs, startUtcMs + fromHour * HOUR_MS)),
    by: instantOf(startUtcMs + (last + 1) * HOUR_MS),
  };
}

/** Harm that the water itself does. */
export function harmDoneBy({ harmDone }: WaterChoice): number {
  return harmDone["wet-roots"] + harmDone["wet-wound"] + harmDone["wet-cold"];
}

function waterReason(context: PlanContext, study: PotStudy, choice: WaterChoice): Reason {
  const { now } = study;
  const sinceDays = daysSince(context, now.plantedUtcMs);
  if (awaitsWateringIn(now, context.nowUtcMs)) return { code: "leafy-watered-in", numbers: { sinceDays } };
  if (now.aftercare?.stage === "first-drink") return { code: "first-drink-due", numbers: { sinceDays } };
  const numbers = { leftFrac: leftFracNow(now), refillFrac: roundTo(refillFracNow(now), 0.01) };
  if (choice.deed === "part" && isForAir(choice)) return { code: "part-for-air", numbers };
  if (choice.deed === "part") {
    return {
      code: "part-before-cold",
      numbers: { ...numbers, ...coldAhead(study.now, study.here.at).figures },
    };
  }
  const rain = missedRain(context, study);
  if (rain !== null) return { code: "rain-does-not-reach", numbers: { ...numbers, ...rain } };
  if (choice.refillHour !== null && choice.refillHour > 0) {
    const reachedAt = instantOf(context.startUtcMs + choice.refillHour * HOUR_MS);
    return { code: "refill-point-today", numbers: { ...numbers, reachedAt } };
  }
  return { code: "at-refill-point", numbers };
}

/** Whether the whole would harm roots by want of air more than by cold. */
function isForAir({ wholeWouldDo }: WaterChoice): boolean {
  return wholeWouldDo !== undefined && wholeWouldDo["wet-roots"] > wholeWouldDo["wet-cold"];
}

/** Rain of today and tomorrow in the open, when it is worth the name and most of it passes the pot by. */
function missedRain(
  { days, ready, size }: PlanContext,
  { here, now }: PotStudy,
): { rainMm: number; reachesMm: number } | null {
  const toDay = Math.min(2, days.length);
  const open = new Float64Array(size);
  for (let i = 0; i < days[toDay - 1]!.toHour * size; i++) open[i % size]! += ready.ahead.rainMm[i]!;
  const weightFrac = now.cloud.weightFrac;
  const rainMm = quantilesOf({ values: open, weightFrac }, [0.5])[0]!;
  const values = sumOver(here.at.rainMm, { size, fromDay: 0, toDay });
  const reachesMm = quantilesOf({ values, weightFrac }, [0.5])[0]!;
  if (rainMm < NOTABLE_RAIN_MM || reachesMm > rainMm / 3) return null;
  return { rainMm: rainFigureMm(rainMm), reachesMm: rainFigureMm(reachesMm) };
}

/** Whole days since an instant. */
export function daysSince({ nowUtcMs }: PlanContext, utcMs: number | null): number {
  return utcMs === null ? 0 : Math.max(0, Math.floor((nowUtcMs - utcMs) / (24 * HOUR_MS)));
}

/** Whether the mix is drier than the content below which it sheds water. */
function shedsWater({ now }: PotStudy): boolean {
  const belowFrac = now.inVessel.repellentBelowFrac;
  if (belowFrac === null) return false;
  const mid = quantilesOf({ values: now.cloud.waterMl, weightFrac: now.cloud.weightFrac }, [0.5])[0]!;
  return mid / now.inVessel.hold.volumeMl < belowFrac;
}
