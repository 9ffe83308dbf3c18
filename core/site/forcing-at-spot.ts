import { airPressureKPa, psychrometricKPaPerC } from "../weather/air-pressure.ts";
import { diffuseShareFrac } from "../weather/diffuse-share.ts";
import type { HoursReady } from "../weather/hours-ready.ts";
import { saturationVapourPressureKPa } from "../weather/humidity.ts";
import { defaultCloudRatioFrac, limitedCloudRatioFrac, netLongwaveHourMjPerM2 } from "../weather/longwave.ts";
import { et0OfHourMm } from "../weather/penman-monteith.ts";
import { netShortwaveMjPerM2 } from "../weather/shortwave.ts";
import { windFactorTo2m } from "../weather/wind-profile.ts";
import type { SpotForcing } from "./forcing.ts";
import { nightDropC } from "./night-drop.ts";
import { roofEdgeShareFrac } from "./roof-edge-rain.ts";
import type { Site } from "./site.ts";
import type { Spot } from "./spot.ts";
import { sunShareByHour } from "./spot-light.ts";
import { sunHours } from "./sun-hours.ts";

export function forcingAtSpot(hours: HoursReady, site: Site, spot: Spot): SpotForcing {
  const size = hours.hourCount * hours.memberCount;
  const out = {
    spotId: spot.id,
    startUtcMs: hours.startUtcMs,
    hourCount: hours.hourCount,
    memberCount: hours.memberCount,
    et0Mm: new Float64Array(size),
    rainMm: new Float64Array(size),
    tempC: new Float64Array(size),
    plantTempC: new Float64Array(size),
    lightMjPerM2: new Float64Array(size),
    gustMPerS: new Float64Array(hours.hourCount),
  };
  const sun = sunHours(hours, site);
  const sunShare = sunShareByHour({ ...hours, zone: site.zone }, spot);
  const gamma = psychrometricKPaPerC(airPressureKPa(site.elevationM));
  const windFactor = windFactorTo2m(10) * spot.windFrac;
  const leastWind = spot.kind === "indoors" ? 0.1 : 0.5;
  const nightRatio = new Float64Array(hours.memberCount).fill(Number.NaN);
  for (let h = 0; h < hours.hourCount; h++) {
    const ra = sun.extraterrestrialMjPerM2[h]!;
    const rso = sun.clearSkyMjPerM2[h]!;
    const high = sun.heightSine[h]! >= 0.3;
    const night = sun.heightSine[h]! < 0.087;
    out.gustMPerS[h] = hours.gustMPerS[h]! * windFactor;
    for (let m = 0; m < hours.memberCount; m++) {
      const i = h * hours.memberCount + m;
      let temp = hours.tempC[i]!;
      if (spot.kind === "indoors" && spot.heatedToC !== undefined) temp = Math.max(temp, spot.heatedToC);
      const ea = saturationVapourPressureKPa(Math.min(hours.dewPointC[i]!, temp));
      const es = saturationVapourPressureKPa(temp);
      const rs = hours.radiationMjPerM2[i]!;
      if (sun.lateAfternoon[h]) nightRatio[m] = limitedCloudRatioFrac(rs / rso);
      let ratio = high ? limitedCloudRatioFrac(rs / rso) : nightRatio[m]!;
      if (Number.isNaN(ratio)) ratio = defaultCloudRatioFrac(ea / es);
      const diffuse = ra > 0 ? diffuseShareFrac(rs / ra) : 1;
      const light = rs * (diffuse * spot.skyFrac + (1 - diffuse) * sunShare[h]!);
      const rnl = netLongwaveHourMjPerM2({ tempC: temp, vapourPressureKPa: ea, cloudRatioFrac: ratio });
      const wind = Math.max(leastWind, hours.windMPerS[i]! * windFactor);
      const et0 = et0OfHourMm({
        tempC: temp,
        netRadiationMjPerM2: netShortwaveMjPerM2(light) - rnl * spot.skyFrac,
        windAt2mMPerS: wind,
        psychrometricKPaPerC: gamma,
        saturationDeficitKPa: es - ea,
        coefficients: "fao56",
      });
      out.et0Mm[i] = Math.max(0, et0);
      out.tempC[i] = temp;
      out.lightMjPerM2[i] = light;
      const rain = hours.rainMm[i]!;
      if (spot.kind === "indoors" || rain <= 0) out.rainMm[i] = 0;
      else if (spot.roofEdge && spot.kind !== "open")
        out.rainMm[i] =
          rain *
          roofEdgeShareFrac(spot.roofEdge, { rainMmPerH: rain, windMPerS: hours.windMPerS[i]! * windFactor });
      else out.rainMm[i] = rain * spot.rainFrac;
      let plant = temp;
      if (night && spot.kind === "open")
        plant -= nightDropC({
          cloudFrac: hours.cloudFrac[i]!,
          windMPerS: hours.windMPerS[i]! * windFactor,
          skyFrac: spot.skyFrac,
        });
      if (night && spot.kind !== "indoors") plant += spot.nightWarmthC;
      out.plantTempC[i] = plant;
    }
  }
  return out;
}
