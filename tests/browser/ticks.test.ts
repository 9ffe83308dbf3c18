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

const leftCount = async () => Number.parseInt((await page.locator("#left").textContent()) ?? "", 10);
const focused = () => page.locator(":focus").textContent();

describe("with script", () => {
  it("a tick by keyboard keeps the focus with the deed, and the head says what is left", async () => {
    await go("/");
    const lead = Number.parseInt((await page.locator(".lead").textContent()) ?? "", 10);
    const row = page.locator(".deed:not(.deed-done)").first();
    await row.locator(".tick button").focus();
    await page.keyboard.press("Enter");
    expect([await focused(), await leftCount()]).toEqual(["Take back", lead - 1]);
    expect(await page.locator(":focus").getAttribute("aria-label")).toMatch(/^Take back: \w/);
    await page.keyboard.press("Enter");
    expect([await focused(), await leftCount()]).toEqual(["Done", lead]);
  });

  it("what was ticked is found again after the page was loaded anew, and taken back there", async () => {
    await go("/");
    const lead = await page.locator(".lead").textContent();
    const answered = page.waitForResponse((answer) => answer.url().endsWith("/done"));
    await page.locator(".deed:not(.deed-done) .tick button").first().click();
    await answered;
    await go("/");
    expect(await page.locator(".lead").textContent()).not.toBe(lead);
    await page.getByRole("link", { name: "Logged today: 1" }).click();
    await page.locator("#logged button").click();
    expect(await page.locator("#logged").count()).toBe(0);
    expect(await page.locator(".lead").textContent()).toBe(lead);
  });

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
