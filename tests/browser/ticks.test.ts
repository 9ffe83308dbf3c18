import type { Browser, BrowserContext, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { demoHouse, type HouseForPages } from "./house-for-pages.ts";
import { openBrowser } from "./open-browser.ts";

let browser: Browser;
let house: HouseForPages;
let context: BrowserContext;
let page: Page;

beforeAll(async () => {
  [browser, house] = await Promise.all([openBrowser(), demoHouse()]);
  context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  page = await context.newPage();
});

afterAll(async () => {
  await context?.close();
  await Promise.all([browser?.close(), house?.close()]);
});

const go = (path: string) => page.goto(new URL(path, house.url).href);

describe("with script", () => {
  it("the pots that are ticked are counted where one is about to say what was done, within the window", async () => {
    await go("/pots");
    const boxes = page.locator("input[name=potId]");
    await boxes.nth(0).check();
    expect(await page.locator("#ticked").textContent()).toBe("One pot ticked");
    await boxes.nth(1).check();
    expect(await page.locator("#ticked").textContent()).toBe("2 pots ticked");
    for (const button of await page.locator(".together button").all()) {
      const box = await button.boundingBox();
      expect(box!.x + box!.width).toBeLessThanOrEqual(390);
    }
  });
});
