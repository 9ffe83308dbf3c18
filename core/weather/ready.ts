import type { JournalEntry } from "../journal/entry.ts";
import type { StandIn } from "../plan/plan.ts";
import type { Site } from "../site/site.ts";
import type { HoursReady } from "./hours-ready.ts";
import { correctRain } from "./instruments/correct-rain.ts";
import { correctTemperature } from "./instruments/correct-temperature.ts";
import { minimumBias } from "./instruments/minimum-bias.ts";
import { reachingNow } from "./ladder/reaching-now.ts";
import { type SettledHours, settleHours } from "./ladder/settle-hours.ts";
import { forecastError } from "./members/forecast-error.ts";
import { hoursOfMembers } from "./members/hours-of-members.ts";
import { type MemberFrame, memberFrame } from "./members/member-frame.ts";
import { PLACE_SD_C } from "./members/temp-members.ts";
import type { Weather } from "./weather.ts";
import { weatherTrust } from "./weather-trust.ts";

/** The weather as the plan reckons with it: nothing unknown, everything that stood in told. */
export interface WeatherReady {
  /** One course, up to the whole hour of now. */
  readonly past: HoursReady;
  /** From the whole hour of now; as many courses as the cloud has particles. */
  readonly ahead: HoursReady;
  readonly standIns: StandIn[];
  readonly trust: "full" | "reduced" | "poor";
  /** Members of a real ensemble behind `ahead`; 0 when its spread was drawn from published forecast errors. */
  readonly realMemberCount: number;
  /** Hours of `ahead` that rest on a forecast. */
  readonly knownHours: number;
}

export interface WeatherReadyInput {
  readonly weather: Weather;
  readonly site: Site;
  /** As it now stands: corrections and undos applied. */
  readonly journal: readonly JournalEntry[];
  readonly nowUtcMs: number;
  readonly cloudSize: number;
  readonly horizonHours: number;
  readonly seed: number;
}

/**
 * Fills, mends and spreads a weather: the written ladder for what the feed left out, the grower's own gauge and
 * thermometer for the past, and members for the time ahead.
 * @throws RangeError for a now, horizon, seed or cloud size that is no such number
 */
export function weatherReady(input: WeatherReadyInput): WeatherReady {
  checkNumbers(input);
  const { site, journal } = input;
  const weather = reachingNow(input.weather, input);
  const settled = settleHours(weather, site, input);
  // The bias is read off the model's own past, so before that past is mended.
  const bias = minimumBias(settled, { journal, placeSdC: PLACE_SD_C.min });
  correctTemperature(settled, journal);
  const gauged = correctRain(settled, journal);
  const frame = memberFrame({ ...input, weather }, settled);
  const span = { nowHour: settled.nowHour, endHour: settled.hourCount };
  const standIns = [...settled.tally.standIns(span), ...withoutMembers(frame)];
  const { knownHours } = settled;
  const ageHours = (input.nowUtcMs - weather.origin.fetchedUtcMs) / 3_600_000;
  return {
    past: { ...pastHours(settled), rainDoubt: { gauged } },
    ahead: hoursOfMembers(frame, bias),
    standIns,
    trust: weatherTrust({ standIns, knownHours, ageHours }),
    realMemberCount: frame.ensemble?.memberCount ?? 0,
    knownHours,
  };
}

function checkNumbers(input: WeatherReadyInput): void {
  const { nowUtcMs, cloudSize, horizonHours, seed } = input;
  if (!Number.isFinite(nowUtcMs)) throw new RangeError(`now ${nowUtcMs} is no instant`);
  if (!Number.isFinite(seed)) throw new RangeError(`seed ${seed} is no number`);
  if (!Number.isInteger(cloudSize) || cloudSize < 1) throw new RangeError(`cloud size ${cloudSize}`);
  if (!Number.isInteger(horizonHours) || horizonHours < 1) throw new RangeError(`horizon ${horizonHours} h`);
}

function pastHours({ columns, nowHour, startUtcMs }: SettledHours): HoursReady {
  const cut = (column: Float64Array) => column.slice(0, nowHour);
  return {
    startUtcMs,
    hourCount: nowHour,
    memberCount: 1,
    tempC: cut(columns.tempC),
    dewPointC: cut(columns.dewPointC),
    rainMm: cut(columns.rainMm),
    windMPerS: cut(columns.windMPerS),
    radiationMjPerM2: cut(columns.radiationMjPerM2),
    cloudFrac: cut(columns.cloudFrac),
    gustMPerS: cut(columns.gustMPerS),
    weatherCode: cut(columns.weatherCode),
  };
}

/** The share of hours ahead for which no real member tells the rain, and the spread that is drawn instead. */
function withoutMembers(frame: MemberFrame): StandIn[] {
  const told = frame.ensemble?.columns.rainMm;
  const step = frame.ensemble?.memberCount ?? 1;
  let untold = 0;
  for (let hour = 0; hour < frame.hourCount; hour++) {
    if (!Number.isFinite(told?.[hour * step] ?? Number.NaN)) untold++;
  }
  if (untold === 0) return [];
  const middle = frame.days[Math.floor(frame.days.length / 2)]!;
  const { et0SdFrac } = forecastError(middle.leadDay, frame.site.latDeg);
  return [
    {
      quantity: "members",
      method: "published-errors",
      shareOfHoursFrac: untold / frame.hourCount,
      errorEstimate: et0SdFrac,
    },
  ];
}
