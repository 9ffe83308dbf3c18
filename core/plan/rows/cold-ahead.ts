import type { PotNow } from "../../pot/pot-now.ts";
import type { SpotDays } from "../days/spot-days.ts";
import { evenly } from "./day-figures.ts";
import { roundTo } from "./round-to.ts";
import { quantilesOf } from "./spread-of.ts";

/** The coldest three nights ahead, in figures of a reason. */
export interface ColdAhead {
  /** Plan day of the last of the three. */
  readonly d: number;
  readonly figures: {
    /** Their mean: the middle of the cloud, or its cold end where only that falls below the line. */
    readonly nightC: number;
    /** The line that it falls below: where water stops, or else where it is cut. */
    readonly limit: "stop" | "cut";
    readonly limitC: number;
    readonly sure: "yes" | "no";
  };
}

/** Cold of the nights at a spot from a plan day on, told against what a pot takes. */
export function coldAhead({ values }: PotNow, at: SpotDays, from = 0): ColdAhead {
  const { stopWaterNightC, cutWaterNightC: cutC } = values;
  const told = [0.5, ...COLD_ENDS].map((quantile) => coldestThree(at, { from, quantile }));
  const { d, nightC } = told.find((one) => one.nightC < cutC) ?? told.at(-1)!;
  const sure = told[0]!.nightC < cutC ? "yes" : "no";
  const stops = stopWaterNightC !== null && nightC < stopWaterNightC;
  const figures = {
    nightC,
    limit: stops ? "stop" : "cut",
    limitC: stops ? stopWaterNightC : cutC,
    sure,
  } as const;
  return { d, figures };
}

/** Shares of the cloud that are colder than what is told as its cold end: a tenth, or none where that is still mild. */
const COLD_ENDS = [0.1, 0];

/** The night whose three-night mean is lowest at a quantile of the cloud. */
function coldestThree(at: SpotDays, { from, quantile }: { from: number; quantile: number }) {
  let best = { d: from, nightC: Number.POSITIVE_INFINITY };
  for (let d = from; d < at.days.length; d++) {
    const sample = { values: at.threeNightC, offset: d * at.size, weightFrac: evenly(at.size) };
    const nightC = quantilesOf(sample, [quantile])[0]!;
    if (nightC < best.nightC) best = { d, nightC };
  }
  return { d: best.d, nightC: Number.isFinite(best.nightC) ? roundTo(best.nightC, 0.1) : 0 };
}
