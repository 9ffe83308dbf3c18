import { withPath } from "../address.ts";
import type { FeedSettings } from "../feed-settings.ts";
import type { AskedPoint } from "../open-meteo/request.ts";

/** Four decimals are the most that are let in; three keep the exact garden at home. */
const COORDINATE_DECIMALS = 3;

/** The fuller of both forms: where they are known it has dew point, gusts and the extremes of long steps. */
const PATH = "/weatherapi/locationforecast/2.0/complete";

/** Null when the base address is not one. */
export function fallbackAddress(feed: FeedSettings, point: AskedPoint): URL | null {
  const { latDeg, lonDeg, elevationM } = point;
  return withPath(feed.fallbackUrl, PATH, {
    lat: String(Number(latDeg.toFixed(COORDINATE_DECIMALS))),
    lon: String(Number(lonDeg.toFixed(COORDINATE_DECIMALS))),
    ...(elevationM !== undefined && Number.isFinite(elevationM)
      ? { altitude: String(Math.round(elevationM)) }
      : {}),
  });
}
