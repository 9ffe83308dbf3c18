import { type Loopback, serveHttp } from "./loopback-server.ts";

const HOUR_S = 3600;
const UNITS: Readonly<Record<string, string>> = {
  temperature_2m: "°C",
  dew_point_2m: "°C",
  precipitation: "mm",
  wind_speed_10m: "m/s",
  wind_gusts_10m: "m/s",
  shortwave_radiation: "W/m²",
  cloud_cover: "%",
};

/** What every column holds at an hour: a plain day, warmer by a degree for each day that a run is old. */
function toldAt(name: string, leadDay: number, stampS: number): number {
  const clock = (stampS / HOUR_S) % 24;
  const swing = Math.sin((Math.PI * (clock - 8)) / 12);
  switch (name) {
    case "temperature_2m":
      return Number((12 + 6 * swing + leadDay).toFixed(1));
    case "dew_point_2m":
      return 5;
    case "precipitation":
      return clock === 16 && Math.floor(stampS / 86_400) % 3 === 0 ? 6 : 0;
    case "shortwave_radiation":
      return clock > 6 && clock <= 18 ? 300 : 0;
    case "cloud_cover":
      return 50;
    default:
      return 3;
  }
}

/**
 * A stand-in for the feed's archive and previous runs, in the shapes of its documentation: `_previous_dayN` beside the plain
 * name, GMT, whole days from start_date to end_date.
 */
export async function servePastYear(of: { runs: boolean }): Promise<Loopback & { readonly urls: URL[] }> {
  const urls: URL[] = [];
  const server = await serveHttp((request, response) => {
    const url = new URL(request.url ?? "", "http://loopback");
    urls.push(url);
    if (url.pathname === "/v1/forecast" && !of.runs) {
      response.writeHead(503).end('{"error":true,"reason":"The service is overloaded"}');
      return;
    }
    const [from, to] = ["start_date", "end_date"].map((name) =>
      Date.parse(`${url.searchParams.get(name)}T00:00:00Z`),
    ) as [number, number];
    const time = Array.from({ length: (to - from) / 3_600_000 + 24 }, (_, i) => from / 1000 + i * HOUR_S);
    const keys = url.searchParams.get("hourly")!.split(",");
    const column = (key: string) => {
      const [name = "", lead = "0"] = key.split("_previous_day");
      return [name, time.map((stampS) => toldAt(name, Number(lead), stampS))] as const;
    };
    response.end(
      JSON.stringify({
        utc_offset_seconds: 0,
        hourly_units: {
          time: "unixtime",
          ...Object.fromEntries(keys.map((key) => [key, UNITS[column(key)[0]]])),
        },
        hourly: { time, ...Object.fromEntries(keys.map((key) => [key, column(key)[1]])) },
      }),
    );
  });
  return { ...server, urls };
}
