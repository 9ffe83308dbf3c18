import { once } from "node:events";
import { Worker } from "node:worker_threads";
import { serve } from "@hono/node-server";
import { Hono } from "hono";
import { DEFAULT_FEED_SETTINGS } from "../../service/feed/feed-settings.ts";
import { createApp } from "../../service/pages/app.tsx";
import { FULL_HOUSE_POTS, fullHouse } from "./full-house.ts";
import type { Asked } from "./page-client.ts";

const CONNECTIONS = 20;
const REQUESTS = 4000;

/** Answering time of the pages with some 300 pots stored, beside a bare route of the same framework. */
export async function bench(): Promise<{ name: string; lines: string[] }> {
  const store = await fullHouse();
  const pages = createApp({
    store,
    feed: DEFAULT_FEED_SETTINGS,
    now: Date.now,
    replan: async () => undefined,
  });
  const app = new Hono().get("/hello", (c) => c.text("hello")).mount("/", pages.fetch);
  const server = serve({ fetch: app.fetch, port: 0, hostname: "127.0.0.1" });
  await new Promise((ready) => server.once("listening", ready));
  const { port } = server.address() as { port: number };
  const client = new Worker(new URL("./page-client.ts", import.meta.url));
  const usual = { origin: `http://127.0.0.1:${port}`, connectionCount: CONNECTIONS, withEtag: false };
  const timed = async (path: string, withEtag = false) => {
    await timesMs(client, { ...usual, path, requestCount: 200 });
    return timesMs(client, { ...usual, path, withEtag, requestCount: REQUESTS });
  };
  const hello = await timed("/hello");
  const lines = [line("/hello", hello, hello)];
  for (const path of ["/", "/pots", "/pots/lemon-3"]) {
    lines.push(line(path, await timed(path), hello));
    lines.push(line(`${path} again`, await timed(path, true), hello));
  }
  await client.terminate();
  await new Promise((closed) => server.close(closed));
  await store.close();
  return {
    name: `pages, ${FULL_HOUSE_POTS} pots, ${CONNECTIONS} connections, ${REQUESTS} requests each`,
    lines,
  };
}

async function timesMs(client: Worker, asked: Asked): Promise<number[]> {
  client.postMessage(asked);
  const [times] = await once(client, "message");
  return times;
}

/** Times of a path, and its slowest hundredth as a multiple of the bare route's. */
function line(path: string, times: readonly number[], hello: readonly number[]): string {
  const [p50, p99, most] = [0.5, 0.99, 1].map((share) => at(times, share));
  const ratio = (p99! / at(hello, 0.99)).toFixed(1);
  return `${path.padEnd(20)} p50 ${p50!.toFixed(1)} ms, p99 ${p99!.toFixed(1)} ms (${ratio} times hello), most ${most!.toFixed(1)} ms`;
}

function at(times: readonly number[], share: number): number {
  const sorted = [...times].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!;
}
