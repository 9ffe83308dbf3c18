import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import { serve } from "@hono/node-server";
import { Hono } from "hono";
import { compress } from "hono/compress";
import { frontDoor } from "../../service/access/front-door.ts";
import { DEFAULT_FEED_SETTINGS } from "../../service/feed/feed-settings.ts";
import { createApp } from "../../service/pages/app.tsx";
import { FULL_HOUSE_POTS, fullHouse } from "../bench/full-house.ts";
import { printLines } from "./print.ts";

/*
 * Lighthouse against the brief, the shelves and a pot of a full house, on this machine alone:
 *
 *   node --import ./service/runtime.mjs tests/drills/lighthouse.ts
 *
 * It is fetched by npx when it is run: it is too large to be installed with every clone.
 */
const LIGHTHOUSE = "lighthouse@13.5.0";
const PATHS = ["/", "/pots", "/pots/lemon-3"];
const LEAST = 95;
const CHROME_FLAGS =
  "--headless=new --no-sandbox --disable-gpu --disable-background-networking --disable-sync";
const INSTALLED = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

const store = await fullHouse();
const pages = createApp({ store, feed: DEFAULT_FEED_SETTINGS, now: Date.now, replan: async () => undefined });
const app = new Hono()
  .use(compress(), ...frontDoor)
  .get("/healthz", (c) => c.text("ok"))
  .route("/", pages);
const server = serve({ fetch: app.fetch, port: 0, hostname: "127.0.0.1" });
await new Promise((ready) => server.once("listening", ready));
const { port } = server.address() as { port: number };

printLines([`Lighthouse, ${FULL_HOUSE_POTS} pots stored, out of 100`]);
let lowest = 100;
for (const path of PATHS) {
  const scores = await scoresOf(`http://127.0.0.1:${port}${path}`);
  lowest = Math.min(lowest, ...Object.values(scores));
  printLines([
    `  ${path.padEnd(16)} ${Object.entries(scores)
      .map(([name, score]) => `${name} ${score}`)
      .join(", ")}`,
  ]);
}
server.close();
await store.close();
process.exitCode = lowest >= LEAST ? 0 : 1;

/** Scores by category, 0 to 100. @throws Error with what Lighthouse said when it gives no report */
async function scoresOf(url: string): Promise<Record<string, number>> {
  const report = await output([
    "--yes",
    LIGHTHOUSE,
    url,
    "--output=json",
    "--quiet",
    `--chrome-flags=${CHROME_FLAGS}`,
  ]);
  const { categories } = JSON.parse(report) as { categories: Record<string, { score: number | null }> };
  return Object.fromEntries(
    Object.entries(categories).map(([name, { score }]) => [name, Math.round(100 * (score ?? 0))]),
  );
}

function output(args: readonly string[]): Promise<string> {
  const chrome = process.env.CHROMIUM_PATH ?? INSTALLED.find(existsSync) ?? "";
  const child = spawn("npx", args, { env: { ...process.env, CHROME_PATH: chrome } });
  let [out, complaint] = ["", ""];
  child.stdout.on("data", (chunk) => (out += String(chunk)));
  child.stderr.on("data", (chunk) => (complaint += String(chunk)));
  return new Promise((resolve, reject) => {
    child.once("error", reject);
    child.once("close", (code) => (code === 0 ? resolve(out) : reject(new Error(complaint.slice(-2000)))));
  });
}
