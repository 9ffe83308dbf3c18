import { instantOf } from "../../site/instant.ts";
import { calendarDay } from "../../site/local-days.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { PotStudy } from "../choice/pot-study.ts";
import type { WaterChoice } from "../choice/water-choice.ts";
import { refillFracNow, usableLeftFrac } from "../harm/refill-point.ts";
import type { Deed, Reason } from "../plan.ts";
import type { PlanContext } from "../plan-context.ts";
import { confidenceOf } from "./confidence-of.ts";
import { roundTo } from "./round-to.ts";
import { meanOf, quantilesOf } from "./spread-of.ts";

/** Hours within which the morning round is done. Common practice: early, before the heat. */
const ROUND_H = 4;

/** Water, or keep dry, or nothing, as the can was decided. */
export function waterDeed(context: PlanContext, study: PotStudy, choice: WaterChoice): Deed | null {
  const { now } = study;
  if (choice.deed === "hold") return holdDeed(context, study, choice);
  if (choice.deed === "not-due") return isDryAfterPlanting(study) ? plantedDryDeed(context, study) : null;
  const from = context.startUtcMs + choice.hour! * HOUR_MS;
  return {
    action: "water",
    amountMl: choice.amountMl,
    ...(choice.deed === "through" ? { untilItRunsThrough: true } : {}),
    from: instantOf(Math.max(from, context.nowUtcMs)),
    by: instantOf(context.startUtcMs + lastHourOfRound(context, choice.hour!) * HOUR_MS),
    reason: waterReason(context, study),
    harmAvoided: roundTo(Math.max(0, choice.thirstSaved - harmDone(choice)), 0.0001),
    confidence: confidenceOf(now.values.leafy && isFreshLeafy(now) ? 0.97 : choice.dueShareFrac),
  };
}

/** The end of the round: within some hours of its start, before any thunder. */
function lastHourOfRound({ days }: PlanContext, fromHour: number): number {
  const hours = days[0]!.workHours;
  let last = fromHour;
  while (last < fromHour + ROUND_H - 1 && hours.includes(last + 1)) last++;
  return last + 1;
}

function waterReason(context: PlanContext, study: PotStudy): Reason {
  const { now } = study;
  const planted = now.plantedUtcMs;
  const sinceDays = planted === null ? 0 : Math.floor((context.nowUtcMs - planted) / (24 * HOUR_MS));
  if (isFreshLeafy(now)) return { code: "leafy-watered-in", numbers: { sinceDays } };
  if (now.aftercare?.stage === "first-drink") return { code: "first-drink-due", numbers: { sinceDays } };
  const rain = quantilesOf(rainOfToday(context, study), [0.5])[0]!;
  const reaches = meanOf(rainHere(context, study));
  const numbers = { leftFrac: leftNow(study), refillFrac: roundTo(refillFracNow(now), 0.01) };
  if (rain >= 2 && reaches < rain / 3) {
    const rainMm = roundTo(rain, 0.1);
    return { code: "rain-does-not-reach", numbers: { ...numbers, rainMm, reachesMm: roundTo(reaches, 0.1) } };
  }
  return { code: "at-refill-point", numbers };
}

function rainOfToday({ days, ready, size }: PlanContext, { now }: PotStudy) {
  const values = new Float64Array(size);
  for (let hour = days[0]!.fromHour; hour < days[0]!.toHour; hour++) {
    for (let m = 0; m < size; m++) values[m]! += ready.ahead.rainMm[hour * size + m]!;
  }
  return { values, weightFrac: now.cloud.weightFrac };
}

function rainHere(_: PlanContext, { here, now }: PotStudy) {
  return { values: here.at.rainMm, weightFrac: now.cloud.weightFrac };
}

/** Share of usable water left now, middle of the cloud. */
export function leftNow({ now }: Pick<PotStudy, "now">): number {
  const left = now.cloud.waterMl.map((waterMl, i) =>
    usableLeftFrac(now, { waterMl, capacityFactor: now.cloud.capacityFactor[i]! }),
  );
  return roundTo(
    Math.max(0, quantilesOf({ values: left, weightFrac: now.cloud.weightFrac }, [0.5])[0]!),
    0.01,
  );
}

/** Due by its dryness, but the water would do more harm than the thirst. */
function holdDeed(context: PlanContext, study: PotStudy, choice: WaterChoice): Deed {
  if (isDryAfterPlanting(study)) return plantedDryDeed(context, study);
  const { now } = study;
  const nightC = coldestThreeNightsC(context, study);
  const { stopWaterNightC, cutWaterNightC } = now.values;
  const cold = choice.harmDone["wet-cold"] >= choice.harmDone["wet-roots"];
  const last = context.days.at(-1)!;
  return {
    action: "keep-dry",
    until: cold ? coldUntil(context, study) : context.days[Math.min(1, context.days.length - 1)]!.day,
    reason: cold
      ? {
          code: "cold-nights-hold-water",
          numbers: {
            nightC: roundTo(nightC, 0.1),
            limitC: stopWaterNightC !== null && nightC < stopWaterNightC ? stopWaterNightC : cutWaterNightC,
            lastDay: last.day,
          },
        }
      : { code: "still-wet", numbers: { leftFrac: leftNow(study) } },
    harmAvoided: roundTo(harmDone(choice), 0.0001),
    confidence: confidenceOf(0.8),
  };
}

/** The coldest three nights in a row of the horizon, mean of their minima and of the cloud. */
function coldestThreeNightsC({ days, size }: PlanContext, { now, here }: PotStudy): number {
  const { weightFrac } = now.cloud;
  return Math.min(
    ...days.map((_, d) => meanOf({ values: here.at.threeNightC, offset: d * size, weightFrac })),
  );
}

/** Last day of the horizon whose three-night mean is still below the line for cutting water. */
function coldUntil({ days, size }: PlanContext, { now, here }: PotStudy): Deed["until"] & string {
  let until = days[0]!.day;
  for (const [d, day] of days.entries()) {
    const meanC = meanOf({ values: here.at.threeNightC, offset: d * size, weightFrac: now.cloud.weightFrac });
    if (meanC < now.values.cutWaterNightC) until = day.day;
  }
  return until;
}

function plantedDryDeed(context: PlanContext, study: PotStudy): Deed {
  const { now } = study;
  const care = now.aftercare!;
  const until = calendarDay(care.dryUntilUtcMs, context.site.zone);
  return {
    action: "keep-dry",
    until,
    reason: {
      code: "freshly-planted-dry",
      numbers: {
        sinceDays: Math.floor((context.nowUtcMs - (now.plantedUtcMs ?? context.nowUtcMs)) / (24 * HOUR_MS)),
        untilDay: until,
        healedFrac: roundTo(care.healedFrac, 0.01),
      },
    },
    harmAvoided: roundTo(study.waterHere.harmDone["wet-wound"], 0.0001),
    confidence: confidenceOf(0.9),
  };
}

function isDryAfterPlanting({ now }: PotStudy): boolean {
  return now.aftercare?.stage === "dry";
}

/** Leafy, planted, and not a drop since. */
export function isFreshLeafy(now: PotStudy["now"]): boolean {
  if (!now.values.leafy || now.plantedUtcMs === null) return false;
  return now.lastWateredUtcMs === null || now.lastWateredUtcMs < now.plantedUtcMs;
}

function harmDone({ harmDone: by }: WaterChoice): number {
  return by["wet-roots"] + by["wet-wound"] + by["wet-cold"];
}
