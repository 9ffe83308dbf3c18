import type { CalendarDay } from "../../../core/site/site.ts";
import { withPath } from "../address.ts";
import type { FeedSettings } from "../feed-settings.ts";
import { FORECAST_VARIABLES, MEMBER_VARIABLES, PAST_VARIABLES } from "./variables.ts";

/** Fourteen, since the fifteenth and sixteenth day often come empty. */
export const FORECAST_DAYS = 14;
const LEAST_PAST_DAYS = 2;
const MOST_PAST_DAYS = 92;
/** Some 100 m: ample for weather, and the exact garden stays at home. */
const COORDINATE_DECIMALS = 3;

export interface AskedPoint {
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly elevationM?: number;
}

/** Null when the base address is not one. */
export function forecastAddress(
  feed: FeedSettings,
  asked: { point: AskedPoint; pastDays: number },
): URL | null {
  return withPath(feed.forecastUrl, "/v1/forecast", {
    ...pointParameters(asked.point),
    hourly: names(FORECAST_VARIABLES),
    ...HOURLY_PARAMETERS,
    past_days: String(pastDaysAsked(asked.pastDays)),
    forecast_days: String(FORECAST_DAYS),
  });
}

/** Members are wanted for the time ahead only. */
export function ensembleAddress(feed: FeedSettings, point: AskedPoint): URL | null {
  return withPath(feed.ensembleUrl, "/v1/ensemble", {
    ...pointParameters(point),
    hourly: names(MEMBER_VARIABLES),
    ...HOURLY_PARAMETERS,
    models: feed.ensembleModel,
    past_days: "0",
    forecast_days: String(FORECAST_DAYS),
  });
}

/** Lead days that the feed keeps of its previous runs, the newest run counted. */
export const LEAD_DAYS = 8;

interface PastSpan {
  readonly point: AskedPoint;
  readonly fromDay: CalendarDay;
  readonly toDay: CalendarDay;
}

/** Past days as the feed's archive has them. */
export function archiveAddress(feed: FeedSettings, asked: PastSpan): URL | null {
  return withPath(feed.archiveUrl, "/v1/archive", {
    ...pastParameters(asked),
    hourly: names(PAST_VARIABLES),
  });
}

/** What the runs of so many days before had told of past days. */
export function previousRunsAddress(feed: FeedSettings, asked: PastSpan): URL | null {
  const hourly = Object.values(PAST_VARIABLES).flatMap(({ name }) =>
    Array.from({ length: LEAD_DAYS }, (_, leadDay) => runName(name, leadDay)),
  );
  return withPath(feed.previousRunsUrl, "/v1/forecast", {
    ...pastParameters(asked),
    hourly: hourly.join(","),
  });
}

/** The name under which the feed keeps what a run of so many days before told. */
export function runName(name: string, leadDay: number): string {
  return leadDay === 0 ? name : `${name}_previous_day${leadDay}`;
}

function pastParameters({ point, fromDay, toDay }: PastSpan): Record<string, string> {
  return { ...pointParameters(point), ...HOURLY_PARAMETERS, start_date: fromDay, end_date: toDay };
}

export function placesAddress(feed: FeedSettings, asked: { name: string; language: string }): URL | null {
  return withPath(feed.geocodingUrl, "/v1/search", {
    name: asked.name,
    count: "10",
    language: asked.language,
    format: "json",
  });
}

export function elevationAddress(feed: FeedSettings, point: AskedPoint): URL | null {
  const { latitude, longitude } = pointParameters({ latDeg: point.latDeg, lonDeg: point.lonDeg });
  return withPath(feed.elevationUrl, "/v1/elevation", { latitude: latitude!, longitude: longitude! });
}

/** Days before today that are asked for: at least two, so that the morning in every zone has its night before. */
export function pastDaysAsked(pastDays: number): number {
  return Math.min(MOST_PAST_DAYS, Math.max(LEAST_PAST_DAYS, Math.ceil(pastDays)));
}

/** UTC and epoch seconds side-step clock changes and half-hour zones; local days are cut elsewhere. */
const HOURLY_PARAMETERS = { timezone: "GMT", timeformat: "unixtime", wind_speed_unit: "ms" } as const;

function pointParameters(point: AskedPoint): Record<string, string> {
  const { elevationM } = point;
  return {
    latitude: rounded(point.latDeg),
    longitude: rounded(point.lonDeg),
    ...(elevationM !== undefined && Number.isFinite(elevationM)
      ? { elevation: String(Math.round(elevationM)) }
      : {}),
  };
}

function rounded(deg: number): string {
  return String(Number(deg.toFixed(COORDINATE_DECIMALS)));
}

function names(variables: Readonly<Record<string, { readonly name: string }>>): string {
  return Object.values(variables)
    .map((variable) => variable.name)
    .join(",");
}
