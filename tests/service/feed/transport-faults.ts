import { createServer as createTlsServer } from "node:https";
import type { AddressInfo } from "node:net";
import { gzipSync } from "node:zlib";
import { type FaultCase, honestForecast, onForecast, rawStage, sends } from "./fault-case.ts";
import { opened, serveTcp } from "./loopback-server.ts";
import { selfSigned } from "./self-signed.ts";
import { forecastBody } from "./wire-answers.ts";

const honest = () => JSON.stringify(forecastBody());
const JSON_TYPE = { "content-type": "application/json; charset=utf-8" };
const none = async () => undefined;

/** The line itself: names, connections, certificates, time, length, packing. */
export const TRANSPORT_FAULTS: readonly FaultCase[] = [
  {
    behaviour: "connection refused",
    ends: "refused: feed-refused, check-network",
    start: async () => {
      const gone = await serveTcp(() => undefined);
      await gone.close();
      return { feed: { forecastUrl: gone.url }, close: none };
    },
  },
  {
    behaviour: "host name that does not exist",
    ends: "refused: feed-unknown-host, check-network",
    start: async () => ({ feed: { forecastUrl: "http://weather.invalid" }, close: none }),
  },
  {
    behaviour: "address that is none",
    ends: "refused: feed-bad-address, check-address",
    start: async () => ({ feed: { forecastUrl: "weather" }, close: none }),
  },
  {
    behaviour: "certificate that nobody vouches for",
    ends: "refused: feed-tls, check-address",
    start: () => {
      const server = createTlsServer(selfSigned(), honestForecast);
      return rawStage(
        opened(server, () => server.closeAllConnections()),
        "https",
      );
    },
  },
  {
    behaviour: "plain text where TLS is expected",
    ends: "refused: feed-tls, check-address",
    start: () =>
      rawStage(
        serveTcp((socket) => socket.end("HTTP/1.1 400 Bad Request\r\n\r\n")),
        "https",
      ),
  },
  {
    behaviour: "hangs up at once",
    ends: "refused: feed-cut-short, wait",
    start: () => rawStage(serveTcp((socket) => socket.destroy())),
  },
  {
    behaviour: "speaks something that is not HTTP",
    ends: "refused: feed-broken-transport, check-network",
    start: () => rawStage(serveTcp((socket) => socket.end("220 mail ready\r\n"))),
  },
  {
    behaviour: "headers without end",
    ends: "refused: feed-broken-transport, check-network",
    start: () =>
      rawStage(serveTcp((socket) => socket.write(`HTTP/1.1 200 OK\r\nx-fill: ${"a".repeat(100_000)}\r\n`))),
  },
  onForecast("slow headers", "refused: feed-timeout, wait", () => undefined),
  onForecast("body that stops half-way and hangs", "refused: feed-timeout, wait", (_, response) => {
    response.writeHead(200, JSON_TYPE).write(honest().slice(0, 500));
  }),
  onForecast("body in drips", "refused: feed-timeout, wait", (_, response) => {
    response.writeHead(200, JSON_TYPE);
    const timer = setInterval(() => response.write(" "), 20);
    response.on("close", () => clearInterval(timer));
  }),
  onForecast("endless body", "refused: feed-too-large, report", (_, response) => {
    response.writeHead(200, JSON_TYPE);
    const more = () => {
      while (!response.destroyed && response.write(" ".repeat(65_536)));
    };
    response.on("drain", more);
    more();
  }),
  onForecast("half the body, then the line drops", "refused: feed-cut-short, wait", (_, response) => {
    const body = honest();
    response.writeHead(200, { ...JSON_TYPE, "content-length": String(Buffer.byteLength(body)) });
    response.write(body.slice(0, body.length / 2), () => response.destroy());
  }),
  onForecast(
    "packed honestly",
    "used, 4 members",
    sends(gzipSync(honest()), { headers: { ...JSON_TYPE, "content-encoding": "gzip" } }),
  ),
  onForecast(
    "small packet that unpacks past the limit",
    "refused: feed-too-large, report",
    sends(gzipSync(Buffer.alloc(4_000_000, " ")), { headers: { ...JSON_TYPE, "content-encoding": "gzip" } }),
  ),
  onForecast(
    "says it is packed, is not",
    "refused: feed-bad-text, report",
    sends(honest(), { headers: { ...JSON_TYPE, "content-encoding": "gzip" } }),
  ),
  onForecast(
    "half a packet",
    "refused: feed-cut-short, wait",
    sends(gzipSync(honest()).subarray(0, 400), { headers: { ...JSON_TYPE, "content-encoding": "gzip" } }),
  ),
  onForecast("redirects in a circle", "refused: feed-redirected, check-address", (_, response) => {
    response.writeHead(302, { location: "/v1/forecast" }).end();
  }),
  onForecast("redirects to nowhere", "refused: feed-redirected, check-address", (_, response) => {
    response.writeHead(301).end();
  }),
  onForecast("redirects once to a good answer", "used, 4 members", (request, response) => {
    if (request.url?.includes("moved=yes")) honestForecast(request, response);
    else {
      const { port } = request.socket.address() as AddressInfo;
      response.writeHead(307, { location: `http://127.0.0.1:${port}/v1/forecast?moved=yes` }).end();
    }
  }),
  onForecast("redirects to another host", "refused: feed-redirected, check-address", (request, response) => {
    if (request.url?.includes("moved=yes")) honestForecast(request, response);
    else {
      const { port } = request.socket.address() as AddressInfo;
      response.writeHead(307, { location: `http://localhost:${port}/v1/forecast?moved=yes` }).end();
    }
  }),
  onForecast("redirects to another port", "refused: feed-redirected, check-address", (_, response) => {
    response.writeHead(302, { location: "http://127.0.0.1:9/v1/forecast" }).end();
  }),
];
