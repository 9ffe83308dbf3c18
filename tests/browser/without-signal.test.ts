import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import type { Browser, BrowserContext, Page } from "playwright-core";
import sharp from "sharp";
import { afterAll, beforeAll, expect, it } from "vitest";
import { startDemoFeed } from "../../demo/demo-feed.ts";
import { fillStore } from "../../demo/fill-store.ts";
import { freePort, type HouseProcess, houseProcess } from "./house-process.ts";
import { openBrowser } from "./open-browser.ts";

const PER_DEVICE = 10;

let browser: Browser;
let dataDir: string;
let port: number;
let house: HouseProcess;
let feed: Awaited<ReturnType<typeof startDemoFeed>>;
const nowUtcMs = Date.now();

beforeAll(async () => {
  dataDir = await mkdtemp(join(tmpdir(), "leebench-signal-"));
  [browser, feed, port] = await Promise.all([
    openBrowser(),
    startDemoFeed(nowUtcMs),
    freePort(),
    fillStore(dataDir, nowUtcMs),
  ]);
  house = await start();
  // The first brief is made while the service already answers.
  while (!(await kept("/")).includes('class="deed"')) await new Promise((later) => setTimeout(later, 250));
}, 120_000);

afterAll(async () => {
  await browser?.close();
  await house?.kill();
  await feed?.server.close();
  await rm(dataDir, { recursive: true, force: true });
});

function start(): Promise<HouseProcess> {
  return houseProcess({ dataDir, port, feed: feed.feed });
}

/** What the house answers now, asked by nobody's browser. */
async function kept(path: string): Promise<string> {
  // A connection of its own: one that was kept open may be closed while the service makes its plan.
  const answer = await fetch(new URL(path, house.url), { headers: { Connection: "close" } });
  return answer.text();
}

interface Entry {
  readonly potId?: string;
  readonly body: { readonly kind: string; readonly text?: string };
}

async function journal(): Promise<readonly Entry[]> {
  return JSON.parse(await kept("/house/copies/export.json")).sites[0].journal;
}

/** A device that has read the brief, the shelf and one pot. */
async function device(potId: string): Promise<{ context: BrowserContext; page: Page }> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  await page.goto(house.url);
  await page.evaluate(
    () =>
      (globalThis as unknown as { navigator: { serviceWorker: { ready: Promise<unknown> } } }).navigator
        .serviceWorker.ready,
  );
  await page.reload();
  await page.goto(new URL(`/pots/${potId}`, house.url).href);
  return { context, page };
}

async function noteTen(page: Page, device: string): Promise<void> {
  for (let i = 1; i <= PER_DEVICE; i++) {
    await page.locator(".log-door", { hasText: "Note" }).click();
    await page.locator("#note-text").fill(`${device} ${i}`);
    await page.locator("details.log[open] button[type=submit]").click();
    await page
      .locator("#state")
      .getByText(i === 1 ? "One entry waits" : `${i} entries wait`)
      .waitFor();
  }
}

it("signal cut, twenty entries on two devices, the process killed as the signal comes back: twenty entries, once each", async () => {
  const [one, two] = [await device("lemon"), await device("olive")];
  for (const { context } of [one, two]) await context.setOffline(true);
  await Promise.all([noteTen(one.page, "one"), noteTen(two.page, "two")]);
  await one.page.goto(house.url);
  expect(await one.page.locator("h1").textContent()).toMatch(/\d/);
  await one.page.locator("#state").getByText("No signal").waitFor();

  // Killed in the midst of taking entries: some are kept and not acknowledged, and come a second time.
  await one.context.setOffline(false);
  await one.page.goto(house.url).catch(() => null);
  await house.kill();
  house = await start();
  await two.context.setOffline(false);
  for (const { page } of [one, two]) await page.goto(house.url);

  const notes = async () =>
    (await journal()).flatMap(({ body }) =>
      body.kind === "note" && /^(one|two) \d+$/.test(body.text ?? "") ? [body.text] : [],
    );
  await expect
    .poll(async () => (await notes()).length, { timeout: 60_000 })
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
  await Promise.all([one.context.close(), two.context.close()]);
}, 240_000);

it("pots that the brief names can be read on the walk, though nobody opened them before", async () => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  await page.goto(house.url);
  const named = await page.locator(".deed-head a").last().getAttribute("href");
  const isKept = () =>
    page.evaluate(`caches.match(${JSON.stringify(named)}, { cacheName: "pages" }).then(Boolean)`);
  await expect.poll(isKept, { timeout: 20_000 }).toBe(true);
  await context.setOffline(true);
  await page.goto(new URL(named!, house.url).href);
  expect(await page.locator("#log h2").textContent()).toBe("Note what was done");
  await context.close();
}, 60_000);

it("a photo waits on the device without signal, and is kept once when it is back", async () => {
  const { context, page } = await device("quay-fig");
  await context.setOffline(true);
  // As a link of the brief leads there; what is kept is the page without the form open.
  await page.goto(new URL("/pots/quay-fig?log=photo#log", house.url).href);
  const drawn = sharp({ create: { width: 80, height: 50, channels: 3, background: "#573" } });
  const buffer = await drawn.jpeg().toBuffer();
  await page.locator("#photo-photo").setInputFiles({ name: "leaf.jpg", mimeType: "image/jpeg", buffer });
  await page.locator("#photo-text").fill("Pale edge");
  await page.locator("details.log[open] button[type=submit]").click();
  await page.locator("#state").getByText("One entry waits").waitFor();
  await context.setOffline(false);
  await page.reload();
  const photos = async () => (await journal()).filter(({ body }) => body.kind === "photo");
  await expect.poll(async () => (await photos()).length, { timeout: 20_000 }).toBe(1);
  expect((await photos())[0]).toMatchObject({ body: { text: "Pale edge" } });
  await page.reload();
  await page.locator(".photo img").scrollIntoViewIfNeeded();
  const drawnPx = () =>
    page.locator(".photo img").evaluate((img) => (img as unknown as { naturalWidth: number }).naturalWidth);
  await expect.poll(drawnPx, { timeout: 15_000 }).toBe(80);
  await context.close();
}, 120_000);

it("a tick shows at once, can be taken back within ten seconds, and is sent behind", async () => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const page = await context.newPage();
  await page.goto(house.url);
  const row = page.locator(".deed").first();
  await row.locator(".tick button").click();
  await row.locator(".back").waitFor();
  expect(await row.getAttribute("class")).toContain("deed-done");
  await row.locator(".back").click();
  expect(await row.getAttribute("class")).not.toContain("deed-done");
  await expect
    .poll(async () => (await journal()).slice(-2).map(({ body }) => body.kind))
    .toEqual([expect.stringMatching(/watered|moved|note/), "undo"]);
  await context.close();
}, 90_000);
