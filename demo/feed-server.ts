import { createServer, type IncomingMessage, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { fallbackBody } from "./feed-server-fallback.ts";
import { answeredWrongly, type FaultSwitch, spoilt } from "./feed-server-fault.ts";
import { hourlyReply, type Parameters } from "./feed-server-hourly.ts";
import type { InventedPlace, InventedWeather } from "./invented-weather-type.ts";

export interface FeedServerInput {
  readonly weatherAt: (latDeg: number, lonDeg: number, nowUtcMs: number) => InventedWeather;
  readonly nowUtcMs: () => number;
  readonly places?: readonly InventedPlace[];
  readonly faults?: FaultSwitch;
  /** Any free port when left out. */
  readonly port?: number;
}

export interface SeenRequest {
  readonly path: string;
  readonly query: Parameters;
  readonly userAgent: string;
}

export interface FeedServer {
  readonly url: string;
  readonly requests: SeenRequest[];
  close(): Promise<void>;
}

interface Reply {
  readonly status: number;
  readonly body: string;
  readonly headers?: Record<string, string>;
}

/** The fallback's answers stay good until the next half hour. */
const FALLBACK_KEEPS_MS = 1_800_000;
const LOOPBACK = "127.0.0.1";

/** A stand-in for both feeds on loopback: their own wire shape, invented weather. */
export async function startFeedServer(input: FeedServerInput): Promise<FeedServer> {
  const requests: SeenRequest[] = [];
  const server = createServer((request, response) => {
    const url = new URL(request.url ?? "/", `http://${LOOPBACK}`);
    const query = Object.fromEntries(url.searchParams);
    requests.push({ path: url.pathname, query, userAgent: request.headers["user-agent"] ?? "" });
    const { faults } = input;
    const fault = url.pathname.startsWith(faults?.onPath ?? "/") ? (faults?.fault ?? null) : null;
    if (answeredWrongly(response, fault)) return;
    const reply = replyTo({ path: url.pathname, query, request }, input);
    send(response, { ...reply, body: reply.status === 200 ? spoilt(reply.body, fault) : reply.body });
  });
  await new Promise<void>((ready, failed) => {
    server.once("error", failed).listen(input.port ?? 0, LOOPBACK, ready);
  });
  const { port } = server.address() as AddressInfo;
  const close = () =>
    new Promise<void>((closed) => {
      server.close(() => closed());
      server.closeAllConnections();
    });
  return { url: `http://${LOOPBACK}:${port}`, requests, close };
}

interface Question {
  readonly path: string;
  readonly query: Parameters;
  readonly request: IncomingMessage;
}

function replyTo(question: Question, input: FeedServerInput): Reply {
  switch (question.path) {
    case "/v1/forecast":
      return hourly(question.query, { input, ensemble: false });
    case "/v1/ensemble":
      return hourly(question.query, { input, ensemble: true });
    case "/v1/search":
      return found(question.query, input.places ?? []);
    case "/v1/elevation":
      return elevation(question.query, input.places ?? []);
    case "/weatherapi/locationforecast/2.0/compact":
    case "/weatherapi/locationforecast/2.0/complete":
      return fallback(question, input);
    default:
      return refusal("Not found", 404);
  }
}

function hourly(query: Parameters, from: { input: FeedServerInput; ensemble: boolean }): Reply {
  const point = pointIn(query.latitude, query.longitude);
  if (point === null) return refusal("Latitude or longitude is out of range.");
  const nowUtcMs = from.input.nowUtcMs();
  const weather = from.input.weatherAt(point.latDeg, point.lonDeg, nowUtcMs);
  const reply = hourlyReply(query, { weather, nowUtcMs, ensemble: from.ensemble });
  return "refusal" in reply ? refusal(reply.refusal) : json(reply.body);
}

/** None found is told by leaving the list out. */
function found(query: Parameters, places: readonly InventedPlace[]): Reply {
  const name = (query.name ?? "").trim().toLowerCase();
  if (query.name === undefined) return refusal("Parameter 'name' is required.");
  const hits = name.length < 2 ? [] : places.filter((place) => place.name.toLowerCase().startsWith(name));
  const results = hits.map((place) => ({
    id: place.id,
    name: place.name,
    latitude: place.latDeg,
    longitude: place.lonDeg,
    elevation: place.elevationM,
    feature_code: "PPL",
    country_code: place.countryCode,
    timezone: place.zone,
    country: place.country,
    admin1: place.region,
  }));
  return json({ ...(results.length === 0 ? {} : { results }), generationtime_ms: 0.1 });
}

/** Height of the nearest invented place, 10 m where there is none. */
function elevation(query: Parameters, places: readonly InventedPlace[]): Reply {
  const point = pointIn(query.latitude, query.longitude);
  if (point === null) return refusal("Latitude or longitude is out of range.");
  const away = (place: InventedPlace) => Math.hypot(place.latDeg - point.latDeg, place.lonDeg - point.lonDeg);
  const nearest = [...places].sort((a, b) => away(a) - away(b))[0];
  return json({ elevation: [nearest?.elevationM ?? 10] });
}

function fallback({ query, request }: Question, input: FeedServerInput): Reply {
  const tooFine = [query.lat, query.lon].some((deg) => /\.\d{5,}/.test(deg ?? ""));
  if (!request.headers["user-agent"]?.includes("@") || tooFine) return refusal("Forbidden", 403);
  const point = pointIn(query.lat, query.lon);
  if (point === null) return refusal("Bad request", 400);
  const nowUtcMs = input.nowUtcMs();
  const updatedUtcMs = Math.floor(nowUtcMs / FALLBACK_KEEPS_MS) * FALLBACK_KEEPS_MS;
  const headers = {
    expires: new Date(updatedUtcMs + FALLBACK_KEEPS_MS).toUTCString(),
    "last-modified": new Date(updatedUtcMs).toUTCString(),
  };
  if (request.headers["if-modified-since"] === headers["last-modified"])
    return { status: 304, body: "", headers };
  const weather = input.weatherAt(point.latDeg, point.lonDeg, nowUtcMs);
  const elevationM = Number(query.altitude ?? 10);
  return { ...json(fallbackBody({ ...point, elevationM }, { weather, nowUtcMs, updatedUtcMs })), headers };
}

function pointIn(lat: string | undefined, lon: string | undefined) {
  const latDeg = lat === undefined ? Number.NaN : Number(lat);
  const lonDeg = lon === undefined ? Number.NaN : Number(lon);
  return Math.abs(latDeg) <= 90 && Math.abs(lonDeg) <= 180 ? { latDeg, lonDeg } : null;
}

function json(body: unknown): Reply {
  return { status: 200, body: JSON.stringify(body) };
}

function refusal(reason: string, status = 400): Reply {
  return { status, body: JSON.stringify({ error: true, reason }) };
}

function send(response: ServerResponse, reply: Reply): void {
  const headers = { "content-type": "application/json; charset=utf-8", ...reply.headers };
  response.writeHead(reply.status, headers).end(reply.body);
}
