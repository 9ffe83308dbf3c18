import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { ACCESS_TABLE } from "../../service/access/access-table.ts";
import { auditPage, isTooWide, lowTargets } from "./audit-page.ts";
import { demoHouse, type HouseForPages } from "./house-for-pages.ts";
import { openBrowser } from "./open-browser.ts";
import { NO_PAGES, PAGES } from "./pages-of-demo.ts";

const PHONE = { width: 390, height: 844 };

let browser: Browser;
let house: HouseForPages;
let context: BrowserContext;
let page: Page;
let complaints: string[] = [];

beforeAll(async () => {
  [browser, house] = await Promise.all([openBrowser(), demoHouse()]);
  context = await browser.newContext({ viewport: PHONE, serviceWorkers: "block" });
  page = await context.newPage();
  page.on("console", (message) => {
    // A page that is not there says so by its status as well, which the browser writes down.
    if (message.type() === "error" && !message.text().includes("404")) complaints.push(message.text());
  });
  page.on("request", (request) => {
    if (!request.url().startsWith(house.url)) complaints.push(`asked elsewhere: ${request.url()}`);
  });
});

afterAll(async () => {
  await Promise.all([browser?.close(), house?.close()]);
});

it("every page that the house serves is looked at", () => {
  const paths = ACCESS_TABLE.filter(([method]) => method === "GET").map(([, path]) => path);
  const isLookedAt = (path: string) => {
    const like = new RegExp(`^${path.replace(/:[^/]+/g, "[^/]+")}$`);
    return PAGES.some((looked) => like.test(looked.split("?")[0]!));
  };
  // One of its own pages has the id of an entry in its address and is looked at below.
  const left = paths.filter((path) => !NO_PAGES.some((kind) => kind.test(path)) && !isLookedAt(path));
  expect(left).toEqual(["/journal/:id/correct"]);
});

/** What can be said against a page in every way of looking at it. */
async function faultsOf(path: string): Promise<string[]> {
  complaints = [];
  await page.setViewportSize(PHONE);
  await page.emulateMedia({ colorScheme: "light" });
  await page.goto(new URL(path, house.url).href);
  const faults = [...(await auditPage(page)), ...(await lowTargets(page))];
  await page.emulateMedia({ colorScheme: "dark" });
  faults.push(...(await auditPage(page, ["color-contrast"])).map((fault) => `dark ${fault}`));
  // 320 px is what is left of 1280 px at 400 %, 640 px at 200 %. [WCAG 2.2, 1.4.10 and 1.4.4]
  for (const width of [320, 390, 640, 1280]) {
    await page.setViewportSize({ width, height: 800 });
    if (await isTooWide(page)) faults.push(`too wide at ${width} px`);
  }
  return [...faults, ...complaints];
}

describe("nothing is held against", () => {
  it.each(PAGES)("%s", async (path) => {
    expect(await faultsOf(path)).toEqual([]);
  });

  it("the page on which an entry is corrected", async () => {
    await page.goto(new URL("/journal", house.url).href);
    const path = await page.locator('a[href$="/correct"]').first().getAttribute("href");
    expect(await faultsOf(path ?? "/journal")).toEqual([]);
  });
});

describe("a reader's own settings", () => {
  it("forced colours reach the drawings", async () => {
    await page.emulateMedia({ forcedColors: "active", colorScheme: "dark" });
    await page.goto(new URL("/pots/lemon", house.url).href);
    const [stroke, ground] = await page.evaluate(() => {
      const { document, getComputedStyle } = globalThis as unknown as {
        document: { querySelector(what: string): unknown; body: unknown };
        getComputedStyle(of: unknown): { stroke: string; backgroundColor: string };
      };
      const line = document.querySelector(".outlook-middle");
      return [getComputedStyle(line).stroke, getComputedStyle(document.body).backgroundColor];
    });
    expect(stroke).not.toBe(ground);
    await page.emulateMedia({ forcedColors: "none" });
  });

  it("nothing moves by itself, and nothing glides for those who want it still", async () => {
    await page.emulateMedia({ reducedMotion: "reduce" });
    await page.goto(house.url);
    const moving = await page.evaluate(() => {
      const { document, getComputedStyle } = globalThis as unknown as {
        document: { getAnimations(): unknown[]; documentElement: unknown };
        getComputedStyle(of: unknown): { scrollBehavior: string };
      };
      return [document.getAnimations().length, getComputedStyle(document.documentElement).scrollBehavior];
    });
    expect(moving).toEqual([0, "auto"]);
  });
});
