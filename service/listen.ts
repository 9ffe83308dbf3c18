import { once } from "node:events";
import type { Server } from "node:http";
import type { AddressInfo } from "node:net";
import { createAdaptorServer } from "@hono/node-server";
import type { Hono } from "hono";

export interface Listening {
  readonly url: string;
  /** Takes no new request; those under way have a while to end. */
  close(): Promise<void>;
}

/** A request must be in within this, so that slow senders cannot hold the house. Chosen by us. */
const WAITS_MS = { request: 30_000, headers: 10_000 };
/**
 * A connection without a request is kept this long, longer than callers and proxies keep theirs: it is then they who
 * hang up, and no request meets a line that was just closed here. Chosen by us; common proxies keep theirs a minute.
 */
const KEPT_IDLE_MS = 75_000;
/** Connections at once; far more than a household has, and fewer than a process may open. Chosen by us. */
const MOST_CONNECTIONS = 500;
const CLOSE_WAIT_MS = 5_000;

/** Serves the app. @throws the system's error, such as EADDRINUSE, when it cannot listen there */
export async function listen(
  app: Hono,
  { host, port, waitsMs = WAITS_MS }: { host: string; port: number; waitsMs?: typeof WAITS_MS },
): Promise<Listening> {
  const server = createAdaptorServer({
    fetch: app.fetch,
    serverOptions: {
      requestTimeout: waitsMs.request,
      headersTimeout: waitsMs.headers,
      keepAliveTimeout: KEPT_IDLE_MS,
      // Node looks only so often whether a wait is over.
      connectionsCheckingInterval: waitsMs.headers / 4,
    },
  }) as Server;
  server.maxConnections = MOST_CONNECTIONS;
  server.listen(port, host);
  await once(server, "listening");
  const { port: actualPort } = server.address() as AddressInfo;
  const name = host.includes(":") ? `[${host}]` : host;
  return { url: `http://${name}:${actualPort}/`, close: () => closed(server) };
}

async function closed(server: Server): Promise<void> {
  const over = once(server, "close");
  server.close();
  server.closeIdleConnections();
  const forced = setTimeout(() => server.closeAllConnections(), CLOSE_WAIT_MS);
  await over;
  clearTimeout(forced);
}
