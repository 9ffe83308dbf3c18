import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { demoHouse, type HouseForPages } from "./house-for-pages.ts";
import { openBrowser } from "./open-browser.ts";

let browser: Browser;
let house: HouseForPages;
let page: Page;

beforeAll(async () => {
  [browser, house] = await Promise.all([openBrowser(), demoHouse()]);
  page = await browser.newPage({
    viewport: { width: 390, height: 600 },
    serviceWorkers: "block",
    reducedMotion: "reduce",
  });
});

afterAll(async () => {
  await Promise.all([browser?.close(), house?.close()]);
});

/** Share of what is within the given elements that the browser has laid out. Given as text: tests know no browser types. */
async function laidOutShare(within: string): Promise<number> {
  return page.evaluate(`(() => {
    const all = [...document.querySelectorAll(${JSON.stringify(within)} + " *")];
    return all.filter((one) => one.checkVisibility({ contentVisibilityAuto: true })).length / all.length;
  })()`);
}

const shown = (text: string) =>
  page.evaluate(`[...document.querySelectorAll("main a, main h2")].some((one) =>
    one.textContent.includes(${JSON.stringify(text)}) &&
    one.checkVisibility({ contentVisibilityAuto: true }) &&
    one.getBoundingClientRect().top < innerHeight && one.getBoundingClientRect().bottom > 0)`);

describe("a phone lays out what it shows, and the rest as it comes near", () => {
  it.each([
    ["/pots", ".boards", 0.75],
    ["/", ".deed, .coming dl > div", 0.75],
  ])("on %s", async (path, within, atMost) => {
    await page.goto(new URL(path, house.url).href);
    const share = await laidOutShare(within);
    expect(share).toBeLessThan(atMost);
    await page.mouse.wheel(0, 100_000);
    await expect.poll(() => laidOutShare(within)).not.toBe(share);
  });

  it("a place on the page is reached, and what stands there is shown", async () => {
    await page.goto(new URL("/pots/lemon#log", house.url).href);
    await expect.poll(() => shown("Note what was done")).toBe(true);
  });

  it("a pot far down is shown where it is looked for", async () => {
    await page.goto(new URL("/pots", house.url).href);
    const last = (await page.locator(".boards a").last().textContent()) ?? "";
    expect(await shown(last)).toBe(false);
    await page.locator(".boards a").last().focus();
    await expect.poll(() => shown(last)).toBe(true);
  });

  it("on paper nothing is left out", async () => {
    await page.goto(new URL("/pots", house.url).href);
    await page.emulateMedia({ media: "print" });
    expect(await laidOutShare(".boards")).toBe(1);
    await page.emulateMedia({ media: "screen" });
  });
});
