import { once } from "node:events";
import { Worker } from "node:worker_threads";
import { serve } from "@hono/node-server";
import { Hono } from "hono";
import { startDemoFeed } from "../../demo/demo-feed.ts";
import { demoCollection } from "../../demo/harbour.ts";
import { demoJournal } from "../../demo/harbour-journal.ts";
import { DEFAULT_FEED_SETTINGS } from "../../service/feed/feed-settings.ts";
import { makePlanNow } from "../../service/jobs/make-plan-now.ts";
import { createApp } from "../../service/pages/app.tsx";
import { openStore, type Store } from "../../service/store/open-store.ts";
import type { Asked } from "./page-client.ts";

const COPIES = 12;
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
  const lines: string[] = [];
  for (const path of ["/hello", "/", "/pots", "/pots/lemon-3"]) {
    await timesMs(client, { ...usual, path, requestCount: 200 });
    lines.push(line(path, await timesMs(client, { ...usual, path, requestCount: REQUESTS })));
    if (path === "/hello") continue;
    const again = { ...usual, path, requestCount: REQUESTS, withEtag: true };
    lines.push(line(`${path} again`, await timesMs(client, again)));
  }
  await client.terminate();
  await new Promise((closed) => server.close(closed));
  await store.close();
  const pots = COPIES * demoCollection.pots.length;
  return { name: `pages, ${pots} pots, ${CONNECTIONS} connections, ${REQUESTS} requests each`, lines };
}

async function fullHouse(): Promise<Store> {
  const nowUtcMs = Date.now();
  const store = await openStore(":memory:");
  const { site, spots, mixes, pots } = demoCollection;
  await store.sites.put(site);
  for (const spot of spots) await store.spots.put(site.id, spot);
  for (const mix of mixes) await store.mixes.put(site.id, mix);
  const journal = demoJournal(nowUtcMs);
  for (let copy = 0; copy < COPIES; copy++) {
    for (const pot of pots) await store.pots.put(site.id, { ...pot, id: `${pot.id}-${copy}` });
    await store.journal.append(
      site.id,
      journal.map((entry) => ({
        ...entry,
        id: `${entry.id}-${copy}`,
        ...(entry.potId === undefined ? {} : { potId: `${entry.potId}-${copy}` }),
      })),
    );
  }
  const { server, feed } = await startDemoFeed(nowUtcMs);
  const made = await makePlanNow({ store, siteId: site.id, nowUtcMs, feed });
  await server.close();
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
  return store;
}

async function timesMs(client: Worker, asked: Asked): Promise<number[]> {
  client.postMessage(asked);
  const [times] = await once(client, "message");
  return times;
}

function line(path: string, times: readonly number[]): string {
  const sorted = [...times].sort((a, b) => a - b);
  const at = (share: number) =>
    sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))]!.toFixed(1);
  return `${path.padEnd(20)} p50 ${at(0.5)} ms, p99 ${at(0.99)} ms, most ${at(1)} ms`;
}
