import { shortwaveFromRange, shortwaveFromSunshine } from "../shortwave.ts";
import { rangeAround } from "./day-window.ts";
import { sunBehindEt0MjPerM2 } from "./sun-behind-et0.ts";
import type { Rung } from "./tally.ts";
import type { WorkingHours } from "./working-hours.ts";

/*
 * Errors are relative ones of daily ET0. A forecast's own sun is out by some 15 % of a day (2.6 of 17 MJ/m2 at 27
 * Spanish stations, our reckoning from open data of 2023-24); what is read off cloud is taken to add as much.
 */
const FROM_MEMBERS: Rung = { quantity: "radiation", method: "ensemble-mean", errorEstimate: 0.05 };
const FROM_CLOUD: Rung = { quantity: "radiation", method: "cloud-cover", errorEstimate: 0.15 };
/** The feed's own day totals differ from ours by -0.02 to 0.11 mm; our comparison of 12 kinds of day. */
const FROM_FEED_ET0: Rung = { quantity: "et0", method: "feed-et0", errorEstimate: 0.03 };
/** Mean absolute error of the reduced set: 0.92 of 3.3 mm. [FISHER2013] */
const FROM_RANGE: Rung = { quantity: "radiation", method: "temperature-range", errorEstimate: 0.28 };

/**
 * Sun where the feed tells none, best rung first: mean of the ensemble; the sun that the feed's own ET0 must have had;
 * cloud [FAO56 eq. 35]; temperature range [FAO56 eq. 50].
 */
export function fillSun(work: WorkingHours): void {
  const { radiationMjPerM2 } = work.columns;
  for (let hour = 0; hour < work.hourCount; hour++) {
    if (!Number.isNaN(radiationMjPerM2[hour]!)) continue;
    if (work.sun.extraterrestrialMjPerM2[hour]! <= 0) radiationMjPerM2[hour] = 0;
    else {
      const found = sunByRung(work, hour);
      radiationMjPerM2[hour] = found.mjPerM2;
      work.tally.mark(found.rung, hour);
    }
  }
}

/** The hours that stand on the last rung, which the daily check of `anchorBareDays` may raise or lower. */
export function sunIsFromRange(work: WorkingHours, hour: number): boolean {
  return work.tally.has(FROM_RANGE, hour);
}

function sunByRung(work: WorkingHours, hour: number): { rung: Rung; mjPerM2: number } {
  const { columns, memberMean, sun } = work;
  const extraterrestrialMjPerM2 = sun.extraterrestrialMjPerM2[hour]!;
  const byMembers = memberMean?.radiationMjPerM2[hour] ?? Number.NaN;
  if (!Number.isNaN(byMembers)) return { rung: FROM_MEMBERS, mjPerM2: byMembers };
  if (!Number.isNaN(columns.feedEt0Mm[hour]!)) {
    return { rung: FROM_FEED_ET0, mjPerM2: sunBehindEt0MjPerM2(work, hour) };
  }
  if (!Number.isNaN(columns.cloudFrac[hour]!)) {
    const sunshineFrac = 1 - columns.cloudFrac[hour]!;
    return { rung: FROM_CLOUD, mjPerM2: shortwaveFromSunshine({ extraterrestrialMjPerM2, sunshineFrac }) };
  }
  const { least, most } = rangeAround(columns.tempC, hour);
  const { elevationM } = work.site;
  const day = { extraterrestrialMjPerM2, elevationM, tempMinC: least, tempMaxC: most, coastal: false };
  return { rung: FROM_RANGE, mjPerM2: shortwaveFromRange(day) };
}
