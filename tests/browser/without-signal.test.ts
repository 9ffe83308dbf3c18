import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { startDemoFeed } from "../../demo/demo-feed.ts";
import { fillStore } from "../../demo/fill-store.ts";
import { type RunningService, startService } from "../../service/start-service.ts";
import { settingsFor } from "./house-for-pages.ts";
import { openBrowser } from "./open-browser.ts";

const PER_DEVICE = 10;

let browser: Browser;
let dataDir: string;
let service: RunningService;
let feed: Awaited<ReturnType<typeof startDemoFeed>>;
const nowUtcMs = Date.now();

beforeAll(async () => {
  dataDir = await mkdtemp(join(tmpdir(), "leebench-signal-"));
  [browser, feed] = await Promise.all([openBrowser(), startDemoFeed(nowUtcMs), fillStore(dataDir, nowUtcMs)]);
  service = await start(0);
  await service.beatNow();
});

afterAll(async () => {
  await browser?.close();
  await service?.close();
  await feed?.server.close();
  await rm(dataDir, { recursive: true, force: true });
});

function start(port: number): Promise<RunningService> {
  const settings = { ...settingsFor(dataDir), feed: feed.feed, port };
  return startService(settings, { beating: false, write: () => undefined });
}

/** A device that has read the brief, the shelf and one pot. */
async function device(potId: string): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  await page.goto(service.url);
  await page.evaluate(
    () =>
      (globalThis as unknown as { navigator: { serviceWorker: { ready: Promise<unknown> } } }).navigator
        .serviceWorker.ready,
  );
  await page.reload();
  await page.goto(new URL(`/pots/${potId}`, service.url).href);
  return { context, page };
}

async function noteTen(page: Page, device: string): Promise<void> {
  for (let i = 1; i <= PER_DEVICE; i++) {
    await page.locator("details.log", { hasText: "Note" }).locator("summary").click();
    await page.locator("#note-text").fill(`${device} ${i}`);
    await page.locator("details.log[open] button[type=submit]").click();
    await page
      .locator("#state")
      .getByText(i === 1 ? "One entry waits" : `${i} entries wait`)
      .waitFor();
  }
}

it("signal cut, twenty entries on two devices, the house restarted, signal back: twenty entries, once each", async () => {
  const [one, two] = [await device("lemon"), await device("olive")];
  for (const { context } of [one, two]) await context.setOffline(true);
  await noteTen(one.page, "one");
  await noteTen(two.page, "two");
  await one.page.goto(service.url);
  expect(await one.page.locator("h1").textContent()).toMatch(/\d/);
  await one.page.locator("#state").getByText("No signal").waitFor();

  const port = Number(new URL(service.url).port);
  await service.close();
  service = await start(port);

  for (const { context, page } of [one, two]) {
    await context.setOffline(false);
    await page.goto(service.url);
  }
  const site = (await service.store.sites.list())[0]!;
  const notes = async () =>
    (await service.store.journal.list(site.id)).flatMap(({ body }) =>
      body.kind === "note" && /^(one|two) \d+$/.test(body.text) ? [body.text] : [],
    );
  await expect
    .poll(async () => (await notes()).length, { timeout: 20_000 })
    .toBeGreaterThanOrEqual(2 * PER_DEVICE);
  for (const { page } of [one, two]) {
    await page.reload();
    await page.waitForLoadState("networkidle");
    expect(await page.locator("#state").isVisible()).toBe(false);
  }
  const wanted = ["one", "two"].flatMap((name) =>
    Array.from({ length: PER_DEVICE }, (_, i) => `${name} ${i + 1}`),
  );
  expect((await notes()).sort()).toEqual(wanted.sort());
}, 90_000);

it("a tick shows at once, can be taken back within ten seconds, and is sent behind", async () => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  await page.goto(service.url);
  const row = page.locator(".deed").first();
  await row.locator(".tick button").click();
  await row.locator(".back").waitFor();
  expect(await row.getAttribute("class")).toContain("deed-done");
  await row.locator(".back").click();
  expect(await row.getAttribute("class")).not.toContain("deed-done");
  await expect
    .poll(async () => {
      const site = (await service.store.sites.list())[0]!;
      return (await service.store.journal.list(site.id)).slice(-2).map(({ body }) => body.kind);
    })
    .toEqual([expect.stringMatching(/watered|moved|note/), "undo"]);
  await context.close();
}, 30_000);
