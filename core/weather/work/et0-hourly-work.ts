import { airPressureKPa, psychrometricKPaPerC } from "../air-pressure.ts";
import { extraterrestrialHourMjPerM2, hourAngleRad, sineOfSunHeight } from "../extraterrestrial.ts";
import { relativeHumidityFrac, saturationSlopeKPaPerC, saturationVapourPressureKPa } from "../humidity.ts";
import { defaultCloudRatioFrac, limitedCloudRatioFrac, netLongwaveHourMjPerM2 } from "../longwave.ts";
import { et0OfHourMm, type HourlyCoefficients } from "../penman-monteith.ts";
import { clearSkyMjPerM2, netShortwaveMjPerM2 } from "../shortwave.ts";
import { soilHeatHourMjPerM2 } from "../soil-heat.ts";
import { SUN_HIGH_SINE } from "../sun-high.ts";
import { windAt2mMPerS } from "../wind-profile.ts";
import { checkInput } from "./input-checks.ts";
import type { WorkStep } from "./work-step.ts";

export interface Et0HourlyInput {
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly elevationM: number;
  readonly dayOfYear: number;
  /** The hour begins here, 0 to 24, may be fractional. */
  readonly hourStartUtc: number;
  readonly tempC: number;
  readonly dewPointC: number;
  readonly windMPerS: number;
  readonly windHeightM: number;
  readonly radiationMjPerM2: number;
  /** Rs/Rso to use for the longwave; without it that of the hour, or by night a default. */
  readonly cloudRatioFrac?: number;
  readonly coefficients: HourlyCoefficients;
}

export interface Et0HourlyWork {
  /** Not floored: dew comes out below 0. */
  readonly et0Mm: number;
  readonly extraterrestrialMjPerM2: number;
  readonly netRadiationMjPerM2: number;
  readonly steps: readonly WorkStep[];
}

/**
 * Reference evapotranspiration of an hour with every step of the way. [FAO56 eq. 53; ASCE2005 eq. 1]
 * @throws RangeError for values that cannot be true
 */
export function et0HourlyWork(input: Et0HourlyInput): Et0HourlyWork {
  checkInput(input);
  const air = airOf(input);
  const sky = skyOf(input, air.actualKPa);
  const { coefficients } = input;
  const et0Mm = et0OfHourMm({ ...air, ...sky, saturationDeficitKPa: air.deficitKPa, coefficients });
  const equation = coefficients === "fao56" ? "FAO56 eq. 53" : "ASCE2005 eq. 1, short reference, hourly";
  return {
    et0Mm,
    extraterrestrialMjPerM2: sky.extraterrestrialMjPerM2,
    netRadiationMjPerM2: sky.netRadiationMjPerM2,
    steps: [...airSteps(air), ...skySteps(sky, coefficients), step("et0Mm", et0Mm, "mm", equation)],
  };
}

type Air = ReturnType<typeof airOf>;
type Sky = ReturnType<typeof skyOf>;

function airOf(input: Et0HourlyInput) {
  const pressureKPa = airPressureKPa(input.elevationM);
  const saturationKPa = saturationVapourPressureKPa(input.tempC);
  const actualKPa = saturationVapourPressureKPa(input.dewPointC);
  return {
    tempC: input.tempC,
    pressureKPa,
    psychrometricKPaPerC: psychrometricKPaPerC(pressureKPa),
    windAt2mMPerS: windAt2mMPerS({ windMPerS: input.windMPerS, heightM: input.windHeightM }),
    saturationKPa,
    actualKPa,
    deficitKPa: saturationKPa - actualKPa,
  };
}

function skyOf(input: Et0HourlyInput, vapourPressureKPa: number) {
  const extraterrestrialMjPerM2 = extraterrestrialHourMjPerM2(input);
  const clear = clearSkyMjPerM2({ extraterrestrialMjPerM2, elevationM: input.elevationM });
  const sunAngleRad = hourAngleRad({ ...input, utcHour: input.hourStartUtc + 0.5 });
  const cloud = cloudRatioOf(input, { clear, sunAngleRad });
  const netShortwave = netShortwaveMjPerM2(input.radiationMjPerM2);
  const netLongwave = netLongwaveHourMjPerM2({
    tempC: input.tempC,
    vapourPressureKPa,
    cloudRatioFrac: cloud.ratioFrac,
    coefficients: input.coefficients,
  });
  return {
    extraterrestrialMjPerM2,
    clearSkyMjPerM2: clear,
    sunAngleRad,
    cloud,
    netShortwaveMjPerM2: netShortwave,
    netLongwaveMjPerM2: netLongwave,
    netRadiationMjPerM2: netShortwave - netLongwave,
  };
}

function cloudRatioOf(
  input: Et0HourlyInput,
  sun: { clear: number; sunAngleRad: number },
): { ratioFrac: number; rule: string } {
  if (input.cloudRatioFrac !== undefined) {
    return { ratioFrac: limitedCloudRatioFrac(input.cloudRatioFrac), rule: "as given, held to 0.3 to 1" };
  }
  if (sineOfSunHeight({ ...input, hourAngleRad: sun.sunAngleRad }) >= SUN_HIGH_SINE) {
    const ratioFrac = limitedCloudRatioFrac(input.radiationMjPerM2 / sun.clear);
    return { ratioFrac, rule: "FAO56 eq. 39, held to 0.3 to 1" };
  }
  return {
    ratioFrac: defaultCloudRatioFrac(relativeHumidityFrac(input)),
    rule: "sun low or down: FAO56 ch. 4 default by humidity",
  };
}

function airSteps(air: Air): WorkStep[] {
  return [
    step("saturationSlopeKPaPerC", saturationSlopeKPaPerC(air.tempC), "kPa/°C", "FAO56 eq. 13"),
    step("airPressureKPa", air.pressureKPa, "kPa", "FAO56 eq. 7"),
    step("psychrometricKPaPerC", air.psychrometricKPaPerC, "kPa/°C", "FAO56 eq. 8"),
    step("windAt2mMPerS", air.windAt2mMPerS, "m/s", "FAO56 eq. 47"),
    step("saturationVapourPressureKPa", air.saturationKPa, "kPa", "FAO56 eq. 11"),
    step("actualVapourPressureKPa", air.actualKPa, "kPa", "FAO56 eq. 14"),
    step("saturationDeficitKPa", air.deficitKPa, "kPa", "FAO56 eq. 53"),
  ];
}

function skySteps(sky: Sky, coefficients: HourlyCoefficients): WorkStep[] {
  const longwaveRule =
    coefficients === "fao56" ? "FAO56 eq. 39, hourly constant" : "FAO56 eq. 39, constant of ASCE2005";
  const soilHeat = soilHeatHourMjPerM2(sky.netRadiationMjPerM2);
  return [
    step("sunAngleRad", sky.sunAngleRad, "rad", "FAO56 eq. 31"),
    step("extraterrestrialMjPerM2", sky.extraterrestrialMjPerM2, "MJ/m2/h", "FAO56 eq. 28"),
    step("clearSkyMjPerM2", sky.clearSkyMjPerM2, "MJ/m2/h", "FAO56 eq. 37"),
    step("cloudRatioFrac", sky.cloud.ratioFrac, "1", sky.cloud.rule),
    step("netShortwaveMjPerM2", sky.netShortwaveMjPerM2, "MJ/m2/h", "FAO56 eq. 38"),
    step("netLongwaveMjPerM2", sky.netLongwaveMjPerM2, "MJ/m2/h", longwaveRule),
    step("netRadiationMjPerM2", sky.netRadiationMjPerM2, "MJ/m2/h", "FAO56 eq. 40"),
    step(
      "soilHeatMjPerM2",
      soilHeat,
      "MJ/m2/h",
      sky.netRadiationMjPerM2 < 0 ? "FAO56 eq. 46" : "FAO56 eq. 45",
    ),
  ];
}

function step(name: string, value: number, unit: string, equation: string): WorkStep {
  return { name, value, unit, equation };
}
