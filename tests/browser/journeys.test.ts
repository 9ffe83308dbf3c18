import type { Browser, BrowserContext, Locator, Page } from "playwright-core";
import sharp from "sharp";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { demoHouse, type HouseForPages } from "./house-for-pages.ts";
import { openBrowser } from "./open-browser.ts";

let browser: Browser;
let house: HouseForPages;

beforeAll(async () => {
  [browser, house] = await Promise.all([openBrowser(), demoHouse()]);
});

afterAll(async () => {
  await Promise.all([browser?.close(), house?.close()]);
});

/** Boards that a jump has brought near are laid out a frame later and move what is below; no thumb is as quick as that. */
async function standsStill(one: Locator): Promise<void> {
  let lastPx: number | undefined;
  const isWhereItWas = async () => {
    const beforePx = lastPx;
    lastPx = (await one.boundingBox())?.y;
    return lastPx !== undefined && lastPx === beforePx;
  };
  await expect.poll(isWhereItWas, { interval: 100 }).toBe(true);
}

/** The journeys that growers make most, each from the page where it begins. Only the last needs script, for its size. */
describe.each([
  ["a phone", { width: 390, height: 844 }, "olive", "tree-aloe"],
  ["a desk", { width: 1280, height: 900 }, "agave", "barrel"],
])("on %s, without script", (_, viewport, potId, otherPotId) => {
  let context: BrowserContext;
  let page: Page;

  beforeAll(async () => {
    context = await browser.newContext({ viewport, javaScriptEnabled: false });
    page = await context.newPage();
  });

  afterAll(() => context?.close());

  const go = (path: string) => page.goto(new URL(path, house.url).href);
  const press = async (name: string | RegExp) => {
    const button = page.getByRole("button", { name }).first();
    await button.scrollIntoViewIfNeeded();
    await standsStill(button);
    await button.click();
  };
  const text = () => page.locator("main").textContent();
  // As a reader sees it: spaces that do not break are spaces.
  const logged = async () =>
    (await page.locator("main .logged li").first().textContent())?.replaceAll("\u00a0", " ");

  it("the brief is read and its first deed ticked", async () => {
    await go("/");
    const open = page.locator(".deed", { has: page.locator(".tick") }).first();
    const pot = await open.locator(".deed-head a").textContent();
    await open.locator(".tick button").click();
    expect(await page.locator("#logged li").first().textContent()).toContain(pot?.split(" (")[0]);
  });

  it("a tick is taken back", async () => {
    await go("/");
    const before = await page.locator("#logged li").count();
    await page.locator("#logged button").first().click();
    expect(await page.locator("#logged li").count()).toBe(before - 1);
  });

  it("a deed that was done otherwise is told with its amount", async () => {
    await go("/");
    await page.locator('.deed-ways a[href*="log=watered"]').first().click();
    await page.locator("details[open] input[name=waterMl]").fill("650");
    await page.locator("details[open] button[type=submit]").click();
    expect(await logged()).toContain("650 ml");
  });

  it("a whole bench is watered with one tap, and all of it taken back", async () => {
    await go("/pots");
    await press(/^All \d+ at Galley sill watered/);
    expect(await page.locator("#kept").textContent()).toMatch(/Kept for \d pots: Watered/);
    await press("Take all of it back");
    expect(await page.locator("#kept").count()).toBe(0);
  });

  it("several pots are moved into shelter together", async () => {
    await go("/pots");
    const ids = [potId, otherPotId];
    for (const id of ids) await page.locator(`input[name=potId][value=${id}]`).check();
    // What stands over the shelf lets nothing show through and leaves most of it to be seen.
    const boxes = [".together", ".together legend"].map((part) => page.locator(part).boundingBox());
    const [panel, heading] = await Promise.all(boxes);
    expect(heading!.y).toBeGreaterThanOrEqual(panel!.y);
    expect(panel!.height).toBeLessThan(0.22 * viewport.height);
    await page.getByLabel("New spot").selectOption({ label: "Net loft" });
    await press("Moved to this spot");
    expect(await page.locator("#kept").textContent()).toContain("Kept for 2 pots: Moved to Net loft");
  });

  it("the pots that ask for something today are looked for", async () => {
    await go("/pots");
    const all = await page.locator("input[name=potId]").count();
    await page.getByText("Choose which to show").click();
    await page.locator("#show-need").selectOption({ label: "Something today" });
    await page.locator("#show-order").selectOption({ label: "Soonest need first" });
    await press("Show");
    const shown = await page.locator("input[name=potId]").count();
    expect(shown).toBeGreaterThan(0);
    expect(shown).toBeLessThan(all);
  });

  it("a pot is weighed, and the entry corrected", async () => {
    await go(`/pots/${potId}`);
    await page.locator(".log-door", { hasText: "Weighed" }).click();
    await page.locator("#weighed-massKg").fill("14,2");
    await page.locator("details.log[open] button[type=submit]").click();
    expect(await logged()).toContain("14 kg");
    const door = page.locator("main .logged a", { hasText: "Correct" }).first();
    // A weight that the pot cannot have brings a doubt; it leaves room for the ways to set it right.
    expect(await page.locator("main .logged .deed-note").count()).toBeGreaterThan(0);
    expect((await door.boundingBox())?.x).toBeGreaterThan(0);
    await door.click();
    await page.getByLabel("Weight").fill("16");
    await press("Keep");
    expect(await logged()).toContain("16 kg");
  });

  it("a pot is asked what would come of watering it or standing it elsewhere", async () => {
    await go("/pots/lemon");
    await page.getByRole("link", { name: "Look closer: what if" }).click();
    expect(await text()).toContain("Watered now until it runs through");
    await page.getByLabel("Stood elsewhere, at").selectOption({ label: "Net loft" });
    await press("Show");
    expect(await text()).toContain("Stood at Net loft");
  });

  it("the journal is searched", async () => {
    await go("/journal");
    const all = await page.locator("main .logged li").count();
    await page.getByLabel("Search").first().fill("poured");
    await press("Search");
    const found = await page.locator("main .logged li").allTextContents();
    expect(found.length).toBeGreaterThan(0);
    expect(found.length).toBeLessThan(all);
    expect(found.every((line) => line.includes("poured"))).toBe(true);
  });

  it("a mix is tried on the bench before it is made", async () => {
    await go("/mixes/spar");
    const before = await text();
    const parts = page.locator('main input[name^="part."]').first();
    await parts.fill(String(Number(await parts.inputValue()) + 4));
    await press("Show");
    expect(await text()).not.toBe(before);
    expect(new URL(page.url()).search).toContain("part.");
  });

  it("the coming fortnight is read, spot by spot", async () => {
    await go("/");
    await page.getByRole("link", { name: "Sky", exact: true }).click();
    expect(await page.locator("main table tbody tr").count()).toBeGreaterThan(3);
    expect(await page.locator("main dl.days dt").count()).toBeGreaterThan(9);
  });

  it("a photo is kept with a pot, made small on the way", async () => {
    const scripted = await browser.newContext({ viewport });
    const own = await scripted.newPage();
    await own.goto(new URL(`/pots/${otherPotId}`, house.url).href);
    const grain = Uint8Array.from({ length: 1800 * 900 }, (_, i) => (i * i) % 251);
    const drawn = sharp(grain, { raw: { width: 1800, height: 900, channels: 1 } });
    const buffer = await drawn.jpeg({ quality: 100 }).toBuffer();
    await own.locator(".log-door", { hasText: "Photo" }).click();
    await own.locator("#photo-photo").setInputFiles({ name: "shelf.jpg", mimeType: "image/jpeg", buffer });
    const sentBytes = () =>
      own
        .locator("#photo-photo")
        .evaluate((input) => (input as unknown as { files: { size: number }[] }).files[0]?.size);
    await expect.poll(sentBytes, { timeout: 15_000 }).toBeLessThan(buffer.length);
    await own.locator("details.log[open] button[type=submit]").click();
    const image = own.locator("main .photo img").first();
    await image.waitFor();
    const [width, height] = [await image.getAttribute("width"), await image.getAttribute("height")].map(
      Number,
    );
    expect(width).toBeLessThanOrEqual(1280);
    expect(width).toBe(2 * height!);
    await scripted.close();
  });
});
