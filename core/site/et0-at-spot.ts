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
  const { hours, spot } = work;
  const fixed = {
    ...at,
    et0Mm: emptyColumn(work),
    nightRatio: new Float64Array(hours.memberCount).fill(Number.NaN),
    gammaKPaPerC: psychrometricKPaPerC(airPressureKPa(work.site.elevationM)),
    leastWindMPerS: spot.kind === "indoors" ? LEAST_WIND.indoors : LEAST_WIND.outdoors,
  };
  for (let hour = 0; hour < hours.hourCount; hour++) fillHour(work, fixed, hour);
  return fixed.et0Mm;
}

interface Fixed {
  readonly airC: Float64Array;
  readonly lightMjPerM2: Float64Array;
  readonly et0Mm: Float64Array;
  /** By member: Rs/Rso of the last late afternoon; NaN before the first. */
  readonly nightRatio: Float64Array;
  readonly gammaKPaPerC: number;
  readonly leastWindMPerS: number;
}

function fillHour(work: SpotWork, fixed: Fixed, hour: number): void {
  const { hours, sun, windFactor } = work;
  const { memberCount, dewPointC, radiationMjPerM2, windMPerS } = hours;
  const { nightRatio } = fixed;
  const clear = sun.clearSkyMjPerM2[hour]!;
  const isHigh = sun.heightSine[hour]! >= SUN_HIGH_SINE;
  const isLate = sun.lateAfternoon[hour] === 1;
  for (let m = 0; m < memberCount; m++) {
    const i = hour * memberCount + m;
    const tempC = fixed.airC[i]!;
    const saturation = saturationVapourPressureKPa(tempC);
    const vapourPressureKPa = Math.min(saturation, saturationVapourPressureKPa(dewPointC[i]!));
    const ownRatio = radiationMjPerM2[i]! / clear;
    if (isLate) nightRatio[m] = ownRatio;
    let cloudRatioFrac = isHigh ? ownRatio : nightRatio[m]!;
    if (Number.isNaN(cloudRatioFrac)) cloudRatioFrac = defaultCloudRatioFrac(vapourPressureKPa / saturation);
    const loss = netLongwaveHourMjPerM2({ tempC, vapourPressureKPa, cloudRatioFrac });
    const et0 = et0OfHourMm({
      tempC,
      netRadiationMjPerM2: netShortwaveMjPerM2(fixed.lightMjPerM2[i]!) - work.spot.skyFrac * loss,
      windAt2mMPerS: Math.max(fixed.leastWindMPerS, windMPerS[i]! * windFactor),
      psychrometricKPaPerC: fixed.gammaKPaPerC,
      saturationDeficitKPa: saturation - vapourPressureKPa,
      coefficients: "fao56",
    });
    fixed.et0Mm[i] = Math.max(0, et0);
  }
}
