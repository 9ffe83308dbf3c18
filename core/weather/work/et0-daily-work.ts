import { airPressureKPa, psychrometricKPaPerC } from "../air-pressure.ts";
import { extraterrestrialDayMjPerM2 } from "../extraterrestrial.ts";
import { saturationSlopeKPaPerC, saturationVapourPressureKPa } from "../humidity.ts";
import { defaultCloudRatioFrac, limitedCloudRatioFrac, netLongwaveDayMjPerM2 } from "../longwave.ts";
import { et0OfDayMm } from "../penman-monteith.ts";
import { clearSkyMjPerM2, netShortwaveMjPerM2 } from "../shortwave.ts";
import { declinationRad, inverseDistance, sunsetAngleRad } from "../sun-geometry.ts";
import {
  daySaturationKPa,
  vapourPressureFromMaxKPa,
  vapourPressureFromMeanKPa,
  vapourPressureFromPairKPa,
} from "../vapour-pressure.ts";
import { windAt2mMPerS } from "../wind-profile.ts";
import { checkDayRange, checkInput } from "./input-checks.ts";
import type { WorkStep } from "./work-step.ts";

/** One of the ways in which a day's humidity is known. */
export type DayHumidity =
  | { readonly rhMaxFrac: number; readonly rhMinFrac: number }
  | { readonly rhMeanFrac: number }
  | { readonly rhMaxFrac: number }
  | { readonly dewPointC: number };

export type Et0DailyInput = DayHumidity & {
  readonly latDeg: number;
  readonly elevationM: number;
  readonly dayOfYear: number;
  readonly tempMinC: number;
  readonly tempMaxC: number;
  readonly windMPerS: number;
  readonly windHeightM: number;
  readonly radiationMjPerM2: number;
};

export interface Et0DailyWork {
  /** Not floored: a cold damp day may come out below 0. */
  readonly et0Mm: number;
  readonly actualVapourPressureKPa: number;
  readonly windAt2mMPerS: number;
  readonly extraterrestrialMjPerM2: number;
  readonly clearSkyMjPerM2: number;
  readonly netRadiationMjPerM2: number;
  readonly steps: readonly WorkStep[];
}

/**
 * Reference evapotranspiration of a day with every step of the way. [FAO56 eq. 6, Box 11]
 * Differs from source: Rs/Rso is held to 0.3 at the lower end too (see `limitedCloudRatioFrac`).
 * @throws RangeError for values that cannot be true
 */
export function et0DailyWork(input: Et0DailyInput): Et0DailyWork {
  checkInput(input);
  checkDayRange(input);
  const air = airOf(input);
  const sky = skyOf(input, air.actualVapourPressureKPa);
  const et0Mm = et0OfDayMm({ ...air, ...sky, saturationDeficitKPa: air.deficitKPa });
  return {
    et0Mm,
    actualVapourPressureKPa: air.actualVapourPressureKPa,
    windAt2mMPerS: air.windAt2mMPerS,
    extraterrestrialMjPerM2: sky.extraterrestrialMjPerM2,
    clearSkyMjPerM2: sky.clearSkyMjPerM2,
    netRadiationMjPerM2: sky.netRadiationMjPerM2,
    steps: [...airSteps(input, air), ...skySteps(input, sky), step("et0Mm", et0Mm, "mm", "FAO56 eq. 6")],
  };
}

type Air = ReturnType<typeof airOf>;
type Sky = ReturnType<typeof skyOf>;

function airOf(input: Et0DailyInput) {
  const pressureKPa = airPressureKPa(input.elevationM);
  const saturationKPa = daySaturationKPa(input);
  const actualVapourPressureKPa = actualOf(input).kPa;
  return {
    tempC: (input.tempMaxC + input.tempMinC) / 2,
    pressureKPa,
    psychrometricKPaPerC: psychrometricKPaPerC(pressureKPa),
    windAt2mMPerS: windAt2mMPerS({ windMPerS: input.windMPerS, heightM: input.windHeightM }),
    saturationKPa,
    actualVapourPressureKPa,
    deficitKPa: saturationKPa - actualVapourPressureKPa,
  };
}

function actualOf(input: Et0DailyInput): { kPa: number; equation: string } {
  if ("dewPointC" in input)
    return { kPa: saturationVapourPressureKPa(input.dewPointC), equation: "FAO56 eq. 14" };
  if ("rhMeanFrac" in input) return { kPa: vapourPressureFromMeanKPa(input), equation: "FAO56 eq. 19" };
  if ("rhMinFrac" in input) return { kPa: vapourPressureFromPairKPa(input), equation: "FAO56 eq. 17" };
  return { kPa: vapourPressureFromMaxKPa(input), equation: "FAO56 eq. 18" };
}

function skyOf(input: Et0DailyInput, vapourPressureKPa: number) {
  const extraterrestrialMjPerM2 = extraterrestrialDayMjPerM2(input);
  const clear = clearSkyMjPerM2({ extraterrestrialMjPerM2, elevationM: input.elevationM });
  const cloudRatioFrac =
    clear > 0
      ? limitedCloudRatioFrac(input.radiationMjPerM2 / clear)
      : defaultCloudRatioFrac(vapourPressureKPa / daySaturationKPa(input));
  const netShortwave = netShortwaveMjPerM2(input.radiationMjPerM2);
  const netLongwave = netLongwaveDayMjPerM2({ ...input, vapourPressureKPa, cloudRatioFrac });
  return {
    extraterrestrialMjPerM2,
    clearSkyMjPerM2: clear,
    cloudRatioFrac,
    netShortwaveMjPerM2: netShortwave,
    netLongwaveMjPerM2: netLongwave,
    netRadiationMjPerM2: netShortwave - netLongwave,
  };
}

function airSteps(input: Et0DailyInput, air: Air): WorkStep[] {
  return [
    step("meanTempC", air.tempC, "°C", "FAO56 eq. 9"),
    step("saturationSlopeKPaPerC", saturationSlopeKPaPerC(air.tempC), "kPa/°C", "FAO56 eq. 13"),
    step("airPressureKPa", air.pressureKPa, "kPa", "FAO56 eq. 7"),
    step("psychrometricKPaPerC", air.psychrometricKPaPerC, "kPa/°C", "FAO56 eq. 8"),
    step("windAt2mMPerS", air.windAt2mMPerS, "m/s", "FAO56 eq. 47"),
    step("saturationVapourPressureKPa", air.saturationKPa, "kPa", "FAO56 eq. 11, 12"),
    step("actualVapourPressureKPa", air.actualVapourPressureKPa, "kPa", actualOf(input).equation),
    step("saturationDeficitKPa", air.deficitKPa, "kPa", "FAO56 eq. 6"),
  ];
}

function skySteps(input: Et0DailyInput, sky: Sky): WorkStep[] {
  const ratioRule =
    sky.clearSkyMjPerM2 > 0 ? "FAO56 eq. 39, held to 0.3 to 1" : "no sun: default by humidity";
  return [
    step("inverseDistance", inverseDistance(input.dayOfYear), "1", "FAO56 eq. 23"),
    step("declinationRad", declinationRad(input.dayOfYear), "rad", "FAO56 eq. 24"),
    step("sunsetAngleRad", sunsetAngleRad(input), "rad", "FAO56 eq. 25"),
    step("extraterrestrialMjPerM2", sky.extraterrestrialMjPerM2, "MJ/m2/day", "FAO56 eq. 21"),
    step("clearSkyMjPerM2", sky.clearSkyMjPerM2, "MJ/m2/day", "FAO56 eq. 37"),
    step("cloudRatioFrac", sky.cloudRatioFrac, "1", ratioRule),
    step("netShortwaveMjPerM2", sky.netShortwaveMjPerM2, "MJ/m2/day", "FAO56 eq. 38"),
    step("netLongwaveMjPerM2", sky.netLongwaveMjPerM2, "MJ/m2/day", "FAO56 eq. 39"),
    step("netRadiationMjPerM2", sky.netRadiationMjPerM2, "MJ/m2/day", "FAO56 eq. 40"),
    step("soilHeatMjPerM2", 0, "MJ/m2/day", "FAO56 eq. 42"),
  ];
}

function step(name: string, value: number, unit: string, equation: string): WorkStep {
  return { name, value, unit, equation };
}
