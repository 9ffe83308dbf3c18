import type { Rung } from "./tally.ts";
import type { WorkingHours } from "./working-hours.ts";

/** Degrees and millimetres: spread of an ensemble's mean against a single run of the first days. Chosen by us. */
const TEMP_FROM_MEMBERS: Rung = { quantity: "temperature", method: "ensemble-mean", errorEstimate: 1.5 };
const RAIN_FROM_MEMBERS: Rung = { quantity: "rain", method: "ensemble-mean", errorEstimate: 3 };
/** Day-to-day spread about the season is 2.7 to 4.3 °C in Seattle and New York. [NWSCITIES2022, our reckoning] */
const TEMP_FROM_CLOCK: Rung = { quantity: "temperature", method: "same-clock-hours", errorEstimate: 4 };
/** Mean of the days that are known would be the size of the error; 3 mm a day is that of a temperate year. */
const RAIN_TAKEN_NONE: Rung = { quantity: "rain", method: "unknown-taken-as-none", errorEstimate: 3 };
const NORMAL: Rung = { quantity: "whole-forecast", method: "normal-for-season", errorEstimate: 0.4 };

/** Hours looked at on either side for the same clock hour: 15 days. */
const CLOCK_REACH_HOURS = 15 * 24;

/** Temperature and rain from the mean of the ensemble where the single forecast has neither. */
export function fillFromMembers(work: WorkingHours): void {
  const { columns, memberMean, tally } = work;
  if (!memberMean) return;
  for (let hour = 0; hour < work.hourCount; hour++) {
    if (Number.isNaN(columns.tempC[hour]!) && !Number.isNaN(memberMean.tempC[hour]!)) {
      columns.tempC[hour] = memberMean.tempC[hour]!;
      tally.mark(TEMP_FROM_MEMBERS, hour);
    }
    if (Number.isNaN(columns.rainMm[hour]!) && !Number.isNaN(memberMean.rainMm[hour]!)) {
      columns.rainMm[hour] = memberMean.rainMm[hour]!;
      tally.mark(RAIN_FROM_MEMBERS, hour);
    }
  }
}

/** Whole hours from now in which both temperature and rain are known. */
export function knownHoursAhead(work: WorkingHours): number {
  let hour = work.nowHour;
  while (hour < work.hourCount && isKnown(work, hour)) hour++;
  return hour - work.nowHour;
}

function isKnown({ columns }: WorkingHours, hour: number): boolean {
  return !Number.isNaN(columns.tempC[hour]!) && !Number.isNaN(columns.rainMm[hour]!);
}

/**
 * Hours before now that nobody reported: temperature from the same clock hours of the days around, rain as none. A
 * pot's past has to be replayed without a break; the grower's gauge reading mends the rain afterwards.
 */
export function fillPast(work: WorkingHours): void {
  const temps = Float64Array.from(work.columns.tempC);
  for (let hour = 0; hour < Math.min(work.nowHour, work.hourCount); hour++) {
    if (Number.isNaN(temps[hour]!)) {
      work.columns.tempC[hour] = sameClockTempC(work, temps, hour);
      work.tally.mark(TEMP_FROM_CLOCK, hour);
    }
    if (Number.isNaN(work.columns.rainMm[hour]!)) {
      work.columns.rainMm[hour] = 0;
      work.tally.mark(RAIN_TAKEN_NONE, hour);
    }
  }
}

/**
 * Hours ahead that no forecast covers, as a normal day of the season: the last rung. Rain is none here; the members
 * drawn around it get rain from the site's own share of wet days.
 */
export function fillNormal(work: WorkingHours): void {
  const temps = Float64Array.from(work.columns.tempC);
  for (let hour = work.nowHour; hour < work.hourCount; hour++) {
    if (isKnown(work, hour)) continue;
    work.columns.tempC[hour] = sameClockTempC(work, temps, hour);
    work.columns.rainMm[hour] = 0;
    for (const name of ["dewPointC", "windMPerS", "radiationMjPerM2", "cloudFrac"] as const) {
      work.columns[name][hour] = Number.NaN;
    }
    work.tally.mark(NORMAL, hour);
  }
}

/** Whether an hour stands on the last rung. */
export function isNormalHour(work: WorkingHours, hour: number): boolean {
  return work.tally.has(NORMAL, hour);
}

function sameClockTempC(work: WorkingHours, known: Float64Array, hour: number): number {
  let sum = 0;
  let weight = 0;
  for (let away = -CLOCK_REACH_HOURS; away <= CLOCK_REACH_HOURS; away += 24) {
    const temp = known[hour + away];
    if (temp === undefined || Number.isNaN(temp)) continue;
    const nearness = 1 / (1 + Math.abs(away) / 24);
    sum += nearness * temp;
    weight += nearness;
  }
  return weight > 0 ? sum / weight : latitudeTempC(work, hour);
}

/**
 * Air temperature by latitude, height, season and hour, °C, for a site about which nothing at all is known. Chosen by
 * us as a plain fit to remembered climate means: 27 °C at the equator, 12 at 45 degrees, 0 at 60; a yearly swing of
 * 0.22 °C a degree of latitude, warmest a month after the sun; 4 °C either side by day and night; 6.5 °C a kilometre.
 */
function latitudeTempC(work: WorkingHours, hour: number): number {
  const { latDeg, elevationM, lonDeg } = work.site;
  const middleMs = work.startUtcMs + (hour + 0.5) * 3_600_000;
  const yearFrac = (middleMs / 86_400_000 - 19_723) / 365.25;
  const solarHour = (middleMs / 3_600_000 + lonDeg / 15) % 24;
  const season = 0.22 * latDeg * Math.cos(2 * Math.PI * (yearFrac - 202 / 365.25));
  const daily = 4 * Math.cos((2 * Math.PI * (solarHour - 14.5)) / 24);
  return 27 - 0.0075 * latDeg ** 2 - 0.0065 * elevationM + season + daily;
}
