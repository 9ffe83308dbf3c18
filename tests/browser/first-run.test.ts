import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { auditPage, isTooWide } from "./audit-page.ts";
import { emptyHouse, type HouseForPages } from "./house-for-pages.ts";
import { openBrowser } from "./open-browser.ts";

let browser: Browser;
let house: HouseForPages;
let page: Page;

beforeAll(async () => {
  [browser, house] = await Promise.all([openBrowser(), emptyHouse()]);
  // Scripts of a page are not needed; axe-core runs in a second visit that allows them.
  const context = await browser.newContext({
    viewport: { width: 390, height: 844 },
    javaScriptEnabled: false,
  });
  page = await context.newPage();
});

afterAll(async () => {
  await Promise.all([browser?.close(), house?.close()]);
});

/** What axe-core says of the step that the house is at. */
async function audited(): Promise<{ violations: string[]; tooWide: boolean }> {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 } });
  const second = await context.newPage();
  await second.goto(page.url());
  const found = { violations: await auditPage(second), tooWide: await isTooWide(second) };
  await context.close();
  return found;
}

const CLEAN = { violations: [], tooWide: false };
const heading = () => page.locator("h1").textContent();
const next = (name: string) => page.getByRole("button", { name, exact: true }).click();

describe("a newcomer with an empty house", () => {
  it("is led from the first visit to the place, and finds it by name", async () => {
    await page.goto(house.url);
    expect(await heading()).toBe("Where do the pots stand?");
    expect(await audited()).toEqual(CLEAN);
    await page.getByLabel("Name of the place").fill("varrow");
    await next("Search");
    await page.getByRole("button", { name: "The pots stand in Varrowhaven" }).click();
  });

  it("chooses spots, and hears at once what is missing", async () => {
    expect(await heading()).toBe("Which spots do you have?");
    expect(await audited()).toEqual(CLEAN);
    await page.getByRole("checkbox", { name: /Open terrace/ }).uncheck();
    await next("Use these spots");
    expect(await page.getByRole("alert").textContent()).toContain("Tick at least one spot");
    await page.getByRole("checkbox", { name: /Open terrace/ }).check();
    await page.getByRole("checkbox", { name: /Roofed porch/ }).check();
    await page.getByLabel("Your name for: Open terrace").fill("Roof");
    await next("Use these spots");
  });

  it("begins a mix from one that is ready", async () => {
    expect(await heading()).toBe("What are the pots filled with?");
    expect(await audited()).toEqual(CLEAN);
    await page.getByRole("link", { name: /Holding and airy/ }).click();
    await page.getByLabel("Name of the mix").fill("House mix");
    await next("Keep this mix");
  });

  it("enters a pot and reads a first brief that names it", async () => {
    expect(await heading()).toBe("Enter a first pot");
    expect(await audited()).toEqual(CLEAN);
    await page.getByLabel("Your name for it").fill("Door lemon");
    await page.getByLabel("Kind of plant").selectOption({ label: "Citrus" });
    for (const [label, value] of [
      ["Width of the plant", "50"],
      ["Height above the rim", "80"],
      ["Width at the rim", "30"],
      ["Width at the base", "23"],
    ] as const)
      await page.getByLabel(label).fill(value);
    await page.getByLabel("Height", { exact: true }).fill("28");
    await page.getByLabel("Wall").selectOption({ label: "Unglazed clay" });
    await page.getByLabel("Mix", { exact: true }).selectOption({ label: "House mix" });
    await page.getByLabel("Spot", { exact: true }).selectOption({ label: "Roof" });
    await next("Keep this pot");
    expect(new URL(page.url()).pathname).toBe("/");
    expect(await page.locator(".today").count()).toBe(1);
    expect(await page.locator(".lead").textContent()).toMatch(/to do|needs nothing/);
    await page.getByRole("link", { name: "Pots", exact: true }).click();
    expect(await page.locator(".shelf").textContent()).toContain("Door lemon");
  });
});
