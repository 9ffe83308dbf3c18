import { type HeatBand, heatBand, heatIndexC, heatIndexParts } from "../heat-index.ts";
import { checkInput } from "./input-checks.ts";
import type { WorkStep } from "./work-step.ts";

export interface HeatIndexWork {
  readonly heatIndexC: number;
  readonly band: HeatBand;
  readonly steps: readonly WorkStep[];
}

/**
 * Heat index with every step. [NWS2014]
 * @throws RangeError for values that cannot be true
 */
export function heatIndexWork(input: { readonly tempC: number; readonly rhFrac: number }): HeatIndexWork {
  checkInput(input);
  const parts = heatIndexParts(input.tempC, input.rhFrac);
  const index = heatIndexC(input.tempC, input.rhFrac);
  const steps: WorkStep[] = [
    { name: "tempF", value: parts.tempF, unit: "°F", equation: "definition" },
    { name: "simpleF", value: parts.simpleF, unit: "°F", equation: "NWS2014 simple form, mean with tempF" },
  ];
  if (parts.regressionF !== null) {
    steps.push(
      { name: "regressionF", value: parts.regressionF, unit: "°F", equation: "ROTHFUSZ1990" },
      { name: "adjustmentF", value: parts.adjustmentF, unit: "°F", equation: "NWS2014 adjustments" },
    );
  }
  steps.push({ name: "heatIndexC", value: index, unit: "°C", equation: "NWS2014" });
  return { heatIndexC: index, band: heatBand(index), steps };
}
