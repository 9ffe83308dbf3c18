import type { RequestListener } from "node:http";
import type { FeedSettings } from "../../../service/feed/feed-settings.ts";
import { type Loopback, serveHttp } from "./loopback-server.ts";
import { ensembleBody, forecastBody, type HourlyBody } from "./wire-answers.ts";

/** One way in which a feed behaves, with the state in which the client must end. */
export interface FaultCase {
  readonly behaviour: string;
  /** As told by `stateOf`: "used ..." or "refused: ...". */
  readonly ends: string;
  readonly start: () => Promise<FaultStage>;
}

/** The servers of one case and the settings that lead to them. */
export interface FaultStage {
  readonly feed: Partial<FeedSettings>;
  close(): Promise<void>;
}

const JSON_TYPE = { "content-type": "application/json; charset=utf-8" };

export type Listener = RequestListener;

/** A case in which the forecast is answered so and the ensemble honestly. */
export function onForecast(behaviour: string, ends: string, listener: RequestListener): FaultCase {
  return { behaviour, ends, start: () => stage({ "/v1/forecast": listener }) };
}

/** A case in which the ensemble is answered so and the forecast honestly. */
export function onEnsemble(behaviour: string, ends: string, listener: RequestListener): FaultCase {
  return { behaviour, ends, start: () => stage({ "/v1/ensemble": listener }) };
}

/** A case in which one thing in an honest forecast is spoilt. */
export function spoiltForecast(
  behaviour: string,
  ends: string,
  spoil: (body: HourlyBody) => void,
): FaultCase {
  return onForecast(behaviour, ends, (_, response) => {
    const body = forecastBody();
    spoil(body);
    response.writeHead(200, JSON_TYPE).end(JSON.stringify(body));
  });
}

/** A case in which one thing in an honest ensemble is spoilt. */
export function spoiltEnsemble(
  behaviour: string,
  ends: string,
  spoil: (body: HourlyBody) => HourlyBody | undefined,
): FaultCase {
  return onEnsemble(behaviour, ends, (_, response) => {
    const body = ensembleBody();
    response.writeHead(200, JSON_TYPE).end(JSON.stringify(spoil(body) ?? body));
  });
}

/** A body sent whole, as text or bytes. */
export function sends(
  body: string | Buffer,
  head: { status?: number; headers?: Record<string, string> } = {},
) {
  const listener: RequestListener = (_, response) => {
    response.writeHead(head.status ?? 200, head.headers ?? JSON_TYPE).end(body);
  };
  return listener;
}

export const honestForecast: RequestListener = (_, response) => {
  response.writeHead(200, JSON_TYPE).end(JSON.stringify(forecastBody()));
};

const honestEnsemble: RequestListener = (_, response) => {
  response.writeHead(200, JSON_TYPE).end(JSON.stringify(ensembleBody()));
};

async function stage(listeners: Readonly<Record<string, RequestListener>>): Promise<FaultStage> {
  const honest: Record<string, RequestListener> = {
    "/v1/forecast": honestForecast,
    "/v1/ensemble": honestEnsemble,
  };
  const server = await serveHttp((request, response) => {
    const path = new URL(request.url ?? "/", "http://loopback").pathname;
    const listener = listeners[path] ?? honest[path] ?? listeners["*"];
    if (listener === undefined) response.writeHead(404).end();
    else listener(request, response);
  });
  return { feed: { forecastUrl: server.url, ensembleUrl: server.url }, close: server.close };
}

/** The stage of a server that is not HTTP, met by the forecast call. */
export async function rawStage(server: Promise<Loopback>, scheme = "http"): Promise<FaultStage> {
  const { port, close } = await server;
  return { feed: { forecastUrl: `${scheme}://127.0.0.1:${port}` }, close };
}
