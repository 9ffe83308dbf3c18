import { airPressureKPa, psychrometricKPaPerC } from "../weather/air-pressure.ts";
import { saturationVapourPressureKPa } from "../weather/humidity.ts";
import { defaultCloudRatioFrac, netLongwaveHourMjPerM2 } from "../weather/longwave.ts";
import { et0OfHourMm } from "../weather/penman-monteith.ts";
import { netShortwaveMjPerM2 } from "../weather/shortwave.ts";
import { SUN_HIGH_SINE } from "../weather/sun-high.ts";
import { emptyColumn, type SpotWork } from "./spot-work.ts";

/**
 * Least wind at 2 m, m/s. Outdoors still air rises by itself over warm ground, for which FAO56 ch. 4 advises 0.5;
 * indoors air moves at about 0.1 (common practice).
 */
const LEAST_WIND = { outdoors: 0.5, indoors: 0.1 } as const;

/**
 * Reference evapotranspiration at a spot, mm in the hour, floored at zero: reckoned anew from the light, the wind and
 * the sky that the spot lets through. Walls and roofs are as warm as the air, so longwave is lost to the open share of
 * sky only. By night Rs/Rso is that of the late afternoon before, or the default by humidity. [FAO56 eq. 53 and ch. 4]
 */
export function et0AtSpotMm(
  work: SpotWork,
  at: { airC: Float64Array; lightMjPerM2: Float64Array },
): Float64Array {
  const { hours, spot, sun, windFactor } = work;
  const { memberCount } = hours;
  const out = emptyColumn(work);
  const nightRatio = new Float64Array(memberCount).fill(Number.NaN);
  const gamma = psychrometricKPaPerC(airPressureKPa(work.site.elevationM));
  const leastWind = spot.kind === "indoors" ? LEAST_WIND.indoors : LEAST_WIND.outdoors;
  for (let hour = 0; hour < hours.hourCount; hour++) {
    const clear = sun.clearSkyMjPerM2[hour]!;
    const isHigh = sun.heightSine[hour]! >= SUN_HIGH_SINE;
    const isLate = sun.lateAfternoon[hour] === 1;
    for (let m = 0; m < memberCount; m++) {
      const i = hour * memberCount + m;
      const tempC = at.airC[i]!;
      const saturation = saturationVapourPressureKPa(tempC);
      const vapour = Math.min(saturation, saturationVapourPressureKPa(hours.dewPointC[i]!));
      const ownRatio = hours.radiationMjPerM2[i]! / clear;
      if (isLate) nightRatio[m] = ownRatio;
      let ratio = isHigh ? ownRatio : nightRatio[m]!;
      if (Number.isNaN(ratio)) ratio = defaultCloudRatioFrac(vapour / saturation);
      const loss = netLongwaveHourMjPerM2({ tempC, vapourPressureKPa: vapour, cloudRatioFrac: ratio });
      const et0 = et0OfHourMm({
        tempC,
        netRadiationMjPerM2: netShortwaveMjPerM2(at.lightMjPerM2[i]!) - spot.skyFrac * loss,
        windAt2mMPerS: Math.max(leastWind, hours.windMPerS[i]! * windFactor),
        psychrometricKPaPerC: gamma,
        saturationDeficitKPa: saturation - vapour,
        coefficients: "fao56",
      });
      out[i] = Math.max(0, et0);
    }
  }
  return out;
}
