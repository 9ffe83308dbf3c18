import { extraterrestrialDayMjPerM2 } from "../extraterrestrial.ts";
import { hargreavesMm } from "../hargreaves.ts";
import { declinationRad, inverseDistance, sunsetAngleRad } from "../sun-geometry.ts";
import { checkDayRange, checkInput } from "./input-checks.ts";
import type { WorkStep } from "./work-step.ts";

export interface Et0TemperatureInput {
  readonly latDeg: number;
  readonly dayOfYear: number;
  readonly tempMinC: number;
  readonly tempMaxC: number;
}

export interface Et0TemperatureWork {
  readonly et0Mm: number;
  readonly extraterrestrialMjPerM2: number;
  readonly steps: readonly WorkStep[];
}

/**
 * Reference evapotranspiration of a day from temperatures alone, with every step. [FAO56 eq. 52]
 * @throws RangeError for values that cannot be true
 */
export function et0TemperatureWork(input: Et0TemperatureInput): Et0TemperatureWork {
  checkInput(input);
  checkDayRange(input);
  const extraterrestrialMjPerM2 = extraterrestrialDayMjPerM2(input);
  const et0Mm = hargreavesMm({ ...input, extraterrestrialMjPerM2 });
  const meanTempC = (input.tempMaxC + input.tempMinC) / 2;
  const steps: WorkStep[] = [
    { name: "meanTempC", value: meanTempC, unit: "°C", equation: "FAO56 eq. 9" },
    { name: "inverseDistance", value: inverseDistance(input.dayOfYear), unit: "1", equation: "FAO56 eq. 23" },
    { name: "declinationRad", value: declinationRad(input.dayOfYear), unit: "rad", equation: "FAO56 eq. 24" },
    { name: "sunsetAngleRad", value: sunsetAngleRad(input), unit: "rad", equation: "FAO56 eq. 25" },
    {
      name: "extraterrestrialMjPerM2",
      value: extraterrestrialMjPerM2,
      unit: "MJ/m2/day",
      equation: "FAO56 eq. 21",
    },
    {
      name: "extraterrestrialMm",
      value: 0.408 * extraterrestrialMjPerM2,
      unit: "mm/day",
      equation: "FAO56 eq. 20",
    },
    { name: "et0Mm", value: et0Mm, unit: "mm", equation: "FAO56 eq. 52" },
  ];
  return { et0Mm, extraterrestrialMjPerM2, steps };
}
