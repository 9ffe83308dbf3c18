import type { MemberColumns, Weather } from "../../core/weather/weather.ts";
import { HOUR_MS } from "../../core/weather/weather.ts";

/** One day of invented weather as a grower would tell it. */
export interface SkyDay {
  readonly minC: number;
  readonly maxC: number;
  readonly windMPerS?: number;
  readonly gustMPerS?: number;
  /** 0 clear, 1 overcast. */
  readonly cloudFrac?: number;
  /** Rain that falls from a local hour for some hours; `chance` is the share of the courses that bring it. */
  readonly rain?: {
    readonly mm: number;
    readonly from: number;
    readonly hours: number;
    readonly chance?: number;
  };
  /** Local hours with thunder. */
  readonly thunder?: readonly number[];
  /** Those of them with hail. */
  readonly hail?: readonly number[];
}

export interface Sky {
  /** What it was like until today. */
  readonly past: SkyDay;
  /** Today first; the last day goes on. */
  readonly ahead: readonly SkyDay[];
  /** Spread of the courses, °C; 0.7 when left out. */
  readonly spreadC?: number;
}

export const PAST_DAYS = 28;
const AHEAD_DAYS = 9;
const MEMBERS = 20;

/** Weather in UTC hours of a site at longitude 0, so that local and UTC clocks agree. */
export function skyWeather(sky: Sky, todayUtcMs: number, nowUtcMs: number): Weather {
  const days = Array.from({ length: PAST_DAYS + AHEAD_DAYS }, (_, d) =>
    d < PAST_DAYS ? sky.past : sky.ahead[Math.min(d - PAST_DAYS, sky.ahead.length - 1)]!,
  );
  const hourCount = days.length * 24;
  const at = (hour: number) => ({
    day: days[Math.floor(hour / 24)]!,
    clock: hour % 24,
    next: days[Math.floor(hour / 24) + 1],
  });
  const column = (of: (hour: number) => number) =>
    Float64Array.from({ length: hourCount }, (_, hour) => of(hour));
  const rainMm = column((hour) => rainIn(at(hour)));
  const tempC = column((hour) => tempAt(at(hour)));
  const hours = {
    tempC,
    dewPointC: tempC.map((temp, hour) => Math.min(temp - 1, at(hour).day.minC - 1)),
    rainMm,
    windMPerS: column((hour) => at(hour).day.windMPerS ?? 1.5),
    gustMPerS: column((hour) => at(hour).day.gustMPerS ?? 2 * (at(hour).day.windMPerS ?? 1.5)),
    radiationMjPerM2: column(() => Number.NaN),
    cloudFrac: column((hour) => at(hour).day.cloudFrac ?? 0.2),
    weatherCode: column((hour) => codeAt(at(hour))),
    feedEt0Mm: column(() => Number.NaN),
    feedRainChanceFrac: column(() => Number.NaN),
  };
  return {
    startUtcMs: todayUtcMs - PAST_DAYS * 24 * HOUR_MS,
    hourCount,
    hours,
    members: membersOf({ sky, at, hourCount, hours }),
    origin: { source: "case", fetchedUtcMs: nowUtcMs - HOUR_MS, credit: "invented" },
  };
}

/** WMO code 4677. */
function codeAt({ day, clock }: { day: SkyDay; clock: number }): number {
  if (day.hail?.includes(clock)) return 96;
  return day.thunder?.includes(clock) ? 95 : 1;
}

type At = (hour: number) => { day: SkyDay; clock: number };

function membersOf(input: { sky: Sky; at: At; hourCount: number; hours: Weather["hours"] }): MemberColumns {
  const { sky, at, hourCount, hours } = input;
  const spreadC = sky.spreadC ?? 0.7;
  const column = (of: (hour: number, member: number) => number) =>
    Float64Array.from({ length: hourCount * MEMBERS }, (_, i) => of(Math.floor(i / MEMBERS), i % MEMBERS));
  // Evenly placed between -1 and 1, in an order that does not go with the rain.
  const place = (member: number) => (2 * ((member * 7) % MEMBERS)) / (MEMBERS - 1) - 1;
  const isWet = (hour: number, member: number) => {
    const chance = at(hour).day.rain?.chance ?? 1;
    return ((member * 11) % MEMBERS) + 0.5 <= chance * MEMBERS;
  };
  return {
    memberCount: MEMBERS,
    tempC: column((hour, member) => hours.tempC[hour]! + spreadC * 1.6 * place(member)),
    dewPointC: column((hour, member) => hours.dewPointC[hour]! + spreadC * place(member)),
    rainMm: column((hour, member) =>
      isWet(hour, member) ? hours.rainMm[hour]! * (1 + 0.4 * place(member)) : 0,
    ),
    windMPerS: column((hour) => hours.windMPerS[hour]!),
    radiationMjPerM2: column(() => Number.NaN),
  };
}

function rainIn({ day, clock }: { day: SkyDay; clock: number }): number {
  const rain = day.rain;
  return rain !== undefined && clock >= rain.from && clock < rain.from + rain.hours
    ? rain.mm / rain.hours
    : 0;
}

/** Coldest at six, warmest at fifteen; the way down at night leads to the next day's minimum. */
function tempAt({ day, clock, next }: { day: SkyDay; clock: number; next?: SkyDay }): number {
  if (clock >= 6 && clock < 15)
    return day.minC + (day.maxC - day.minC) * Math.sin(((clock - 6) / 9) * (Math.PI / 2));
  if (clock < 6) return day.minC + (day.maxC - day.minC) * 0.25 * ((6 - clock) / 6) ** 1.5;
  const low = (next ?? day).minC;
  const evening = low + ((next ?? day).maxC - low) * 0.25;
  return evening + (day.maxC - evening) * Math.cos(((clock - 15) / 9) * (Math.PI / 2));
}
