import type { Browser, BrowserContextOptions, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { demoHouse, type HouseForPages } from "./house-for-pages.ts";
import { openBrowser } from "./open-browser.ts";

const PHONE = { width: 390, height: 844 };
const DESK = { width: 1280, height: 900 };

let browser: Browser;
let house: HouseForPages;

beforeAll(async () => {
  [browser, house] = await Promise.all([openBrowser(), demoHouse()]);
});

afterAll(async () => {
  await Promise.all([browser?.close(), house?.close()]);
});

/** Opens a page, does something there, and closes it; whatever the browser complains of is returned. */
async function at<T>(
  path: string,
  options: BrowserContextOptions,
  look: (page: Page) => Promise<T>,
): Promise<{ seen: T; complaints: string[]; elsewhere: string[] }> {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const complaints: string[] = [];
  const elsewhere: string[] = [];
  page.on("console", (message) => {
    if (message.type() === "error") complaints.push(message.text());
  });
  page.on("request", (request) => {
    if (!request.url().startsWith(house.url.replace(/\/$/, ""))) elsewhere.push(request.url());
  });
  try {
    await page.goto(new URL(path, house.url).href);
    return { seen: await look(page), complaints, elsewhere };
  } finally {
    await context.close();
  }
}

describe("the brief in a browser", () => {
  it.each([
    ["phone", PHONE],
    ["desk", DESK],
  ])("fits a %s, without script, complaint or request elsewhere", async (_, viewport) => {
    const { seen, complaints, elsewhere } = await at(
      "/",
      { viewport, javaScriptEnabled: false },
      async (page) => ({
        heading: await page.locator("h1").textContent(),
        ticks: await page.locator(".deed .tick button").count(),
        smallest: await smallestTarget(page),
        credit: await page.locator("footer").textContent(),
      }),
    );
    expect(seen.heading).toMatch(/\d/);
    expect(seen.ticks).toBeGreaterThan(0);
    expect(seen.smallest).toBeGreaterThanOrEqual(48);
    expect(seen.credit).toContain("Invented weather");
    expect(complaints).toEqual([]);
    expect(elsewhere).toEqual([]);
  });

  it("ticks a deed with one tap and takes it back with another, without script", async () => {
    await at("/", { viewport: PHONE, javaScriptEnabled: false }, async (page) => {
      const deed = page.locator(".deed").first();
      const pot = (await deed.locator("a").first().getAttribute("href")) ?? "";
      const ofPot = page.locator(".deed", { has: page.locator(`a[href="${pot}"]`) });
      // Amounts may be told anew with the minute, so a deed is known by its pot.
      const before = await ofPot.count();
      await deed.locator(".tick button").click();
      await expect.poll(() => ofPot.count()).toBe(before - 1);
      await page.locator(".logged button").first().click();
      await expect.poll(() => ofPot.count()).toBe(before);
    });
  });

  it("is reached by keyboard: skip link first, then the sections", async () => {
    const { seen } = await at("/", { viewport: DESK }, async (page) => {
      await page.keyboard.press("Tab");
      const first = await page.locator(":focus").getAttribute("href");
      await page.keyboard.press("Tab");
      return [first, await page.locator(":focus").getAttribute("href")];
    });
    expect(seen).toEqual(["#main", "/"]);
  });
});

/** Height of the lowest button, CSS px. */
async function smallestTarget(page: Page): Promise<number> {
  const heights = await Promise.all(
    (await page.locator("button, .head nav a").all()).map(
      async (target) => (await target.boundingBox())?.height,
    ),
  );
  return Math.min(...heights.filter((height) => height !== undefined));
}
