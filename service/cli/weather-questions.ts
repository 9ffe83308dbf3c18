import type { Problem } from "../../core/problem.ts";
import type { WorkStep } from "../../core/weather/work/work-step.ts";

/** Rounding and two instruments may put the dew point so far above the air; more is a slip. Chosen by us. */
const MOST_DEW_POINT_ABOVE_C = 0.5;

/** Thin broken cloud sends more than a clear sky for minutes, hardly by this much for an hour. Chosen by us. */
const MOST_OVER_CLEAR_SKY = 1.2;

/** Twilight that the closed form for a clear sky takes for night, MJ/m2. Chosen by us. */
const TWILIGHT_MJ_PER_M2 = 0.05;

interface Air {
  readonly warmestC: number;
  readonly dewPointC?: number | undefined;
  readonly radiationMjPerM2: number;
}

/** What is no reason to refuse a line, yet worth a second look before its figure is relied on. */
export function weatherQuestions(air: Air, steps: readonly WorkStep[]): Problem[] {
  return [...dewPointQuestions(air), ...radiationQuestions(air, steps)];
}

function dewPointQuestions({ dewPointC, warmestC }: Air): Problem[] {
  if (dewPointC === undefined || dewPointC <= warmestC + MOST_DEW_POINT_ABOVE_C) return [];
  const data = { given: dewPointC, warmestC };
  return [{ code: "dew-point-above-temperature", path: ["dewPointC"], data }];
}

function radiationQuestions({ radiationMjPerM2 }: Air, steps: readonly WorkStep[]): Problem[] {
  const clearSkyMjPerM2 = steps.find(({ name }) => name === "clearSkyMjPerM2")?.value ?? Number.NaN;
  const mostMjPerM2 = Math.max(TWILIGHT_MJ_PER_M2, MOST_OVER_CLEAR_SKY * clearSkyMjPerM2);
  if (!(radiationMjPerM2 > mostMjPerM2)) return [];
  const data = { given: radiationMjPerM2, clearSkyMjPerM2, mostMjPerM2 };
  return [{ code: "radiation-above-clear-sky", path: ["radiationMjPerM2"], data }];
}
