import { airPressureKPa, psychrometricKPaPerC } from "./air-pressure.ts";
import { saturationVapourPressureKPa } from "./humidity.ts";
import { netLongwaveHourMjPerM2 } from "./longwave.ts";
import { et0OfHourMm } from "./penman-monteith.ts";
import { netShortwaveMjPerM2 } from "./shortwave.ts";
import { windAt2mMPerS } from "./wind-profile.ts";

/** Reference evapotranspiration of an hour in the open, mm, not floored. Wind at 10 m. [FAO56 eq. 53] */
export function et0OfOpenHourMm(hour: {
  elevationM: number;
  tempC: number;
  dewPointC: number;
  windMPerS: number;
  radiationMjPerM2: number;
  cloudRatioFrac: number;
}): number {
  const vapourPressureKPa = saturationVapourPressureKPa(hour.dewPointC);
  const loss = netLongwaveHourMjPerM2({ ...hour, vapourPressureKPa });
  return et0OfHourMm({
    tempC: hour.tempC,
    netRadiationMjPerM2: netShortwaveMjPerM2(hour.radiationMjPerM2) - loss,
    windAt2mMPerS: windAt2mMPerS({ windMPerS: hour.windMPerS, heightM: 10 }),
    psychrometricKPaPerC: psychrometricKPaPerC(airPressureKPa(hour.elevationM)),
    saturationDeficitKPa: saturationVapourPressureKPa(hour.tempC) - vapourPressureKPa,
    coefficients: "fao56",
  });
}
