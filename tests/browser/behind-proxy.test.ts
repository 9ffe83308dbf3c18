import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, afterEach, beforeAll, expect, it } from "vitest";
import { startDemoFeed } from "../../demo/demo-feed.ts";
import { fillStore } from "../../demo/fill-store.ts";
import { type RunningService, startService } from "../../service/start-service.ts";
import { settingsFor } from "./house-for-pages.ts";
import { openBrowser } from "./open-browser.ts";
import { type PrefixProxy, prefixProxy } from "./prefix-proxy.ts";

/* A guarded house under a path behind a proxy, in a real browser. */

const PASSPHRASE = "the fig on the stairs";

let browser: Browser;
let dataDir: string;
let feed: Awaited<ReturnType<typeof startDemoFeed>>;
let service: RunningService;
let proxy: PrefixProxy;
let contexts: BrowserContext[] = [];
const nowUtcMs = Date.now();

beforeAll(async () => {
  dataDir = await mkdtemp(join(tmpdir(), "leebench-proxy-"));
  [browser, feed] = await Promise.all([openBrowser(), startDemoFeed(nowUtcMs), fillStore(dataDir, nowUtcMs)]);
  const settings = settingsFor(dataDir);
  service = await startService(
    { ...settings, feed: feed.feed, publicHost: "localhost", passphrase: PASSPHRASE },
    { beating: false, write: () => undefined },
  );
  await service.replan((await service.store.sites.list())[0]!.id);
  proxy = await prefixProxy(service.url, "/garden/bench");
}, 120_000);

afterEach(async () => {
  await Promise.all(contexts.map((context) => context.close()));
  contexts = [];
});

afterAll(async () => {
  await browser?.close();
  await proxy?.close();
  await service?.close();
  await feed?.server.close();
  await rm(dataDir, { recursive: true, force: true });
});

async function notes(): Promise<string[]> {
  const [site] = await service.store.sites.list();
  const journal = await service.store.journal.list(site!.id);
  return journal.flatMap(({ body }) => (body.kind === "note" ? [body.text] : []));
}

async function entryCount(): Promise<number> {
  const [site] = await service.store.sites.list();
  return (await service.store.journal.list(site!.id)).length;
}

async function signIn(page: Page): Promise<void> {
  await page.locator('input[name="passphrase"]').fill(PASSPHRASE);
  await page.locator("main form button[type=submit]").click();
  await page.waitForURL((url) => !url.pathname.includes("sign-in"));
}

/** A phone that has signed in and has the brief and a pot's page kept. */
async function phone(): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  contexts.push(context);
  const page = await context.newPage();
  await page.goto(proxy.url);
  expect(new URL(page.url()).pathname).toBe("/garden/bench/sign-in");
  await signIn(page);
  await page.waitForFunction("navigator.serviceWorker.controller !== null");
  await page.reload();
  await page.goto(`${proxy.url}pots/lemon`);
  return { context, page };
}

async function writeNote(page: Page, text: string): Promise<void> {
  await page.locator(".log-door", { hasText: "Note" }).click();
  await page.locator("#note-text").fill(text);
  await page.locator("details.log[open] button[type=submit]").click();
}

it("under a path the worker keeps pages, shows one for what it has not, and entries wait and go out", async () => {
  const { context, page } = await phone();
  const scope = await page.evaluate(
    "navigator.serviceWorker.getRegistrations().then((all) => all.map(({ scope }) => new URL(scope).pathname))",
  );
  expect(scope).toEqual(["/garden/bench/"]);
  await context.setOffline(true);
  await page.goto(proxy.url);
  expect(await page.locator(".deed").count()).toBeGreaterThan(0);
  await page.locator("#state").getByText("No signal").waitFor();
  await page.goto(`${proxy.url}house/about`);
  expect(await page.locator("h1").textContent()).toBe("No signal here");
  await page.goto(`${proxy.url}pots/lemon`);
  await writeNote(page, "Written under a path");
  await page.locator("#state").getByText("One entry waits").waitFor();
  expect(new URL(page.url()).pathname).toMatch(/^\/garden\/bench\//);
  await context.setOffline(false);
  await page.goto(proxy.url);
  await expect.poll(notes, { timeout: 20_000 }).toContain("Written under a path");
  await expect.poll(() => page.locator("#state").isVisible(), { timeout: 20_000 }).toBe(false);
  expect(proxy.astray).toEqual([]);
}, 120_000);

it("a tick and a form sent after the session ended wait on the device until somebody signs in", async () => {
  const { page } = await phone();
  await page.goto(proxy.url);
  const before = await entryCount();
  await service.store.sessions.endAll("owner");

  await page.locator(".deed .tick button").first().click();
  await page.locator("#state").getByText("One entry waits").waitFor();
  // The pot's page is still shown as it was kept; what is written there is not lost either.
  await page.evaluate("history.back()");
  await page.waitForURL(/pots\/lemon$/);
  await writeNote(page, "Written after the session ended");
  await page.waitForURL(/\/garden\/bench\/sign-in/);
  await page.locator("#state").getByText("2 entries wait").waitFor();
  expect(await entryCount()).toBe(before);

  // Nothing is sent before somebody has signed in, however often the page is looked at.
  await page.reload();
  await page.locator("#state").getByText("2 entries wait").waitFor();
  expect(await entryCount()).toBe(before);
  await signIn(page);
  await expect.poll(entryCount, { timeout: 20_000 }).toBe(before + 2);
  expect(await notes()).toContain("Written after the session ended");
  await expect.poll(() => page.locator("#state").isVisible(), { timeout: 20_000 }).toBe(false);
  await page.reload();
  expect(await entryCount()).toBe(before + 2);
  expect(proxy.astray).toEqual([]);
}, 120_000);

it("what asks to be kept nowhere is not kept by the worker", async () => {
  const { page } = await phone();
  await page.goto(`${proxy.url}house/access`);
  await page.evaluate("fetch('copies/export.json').then((answer) => answer.text())");
  const kept = (await page.evaluate(
    "caches.open('pages').then((store) => store.keys()).then((all) => all.map(({ url }) => new URL(url).pathname))",
  )) as string[];
  expect(kept).toContain("/garden/bench/pots/lemon");
  expect(kept.filter((path) => /access|export/.test(path))).toEqual([]);
}, 60_000);
