import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { demoHouse, type HouseForPages } from "./house-for-pages.ts";
import { openBrowser } from "./open-browser.ts";

let browser: Browser;
let house: HouseForPages;
let page: Page;

beforeAll(async () => {
  [browser, house] = await Promise.all([openBrowser(), demoHouse()]);
  // Half of a desk's width in CSS px is what 200 % zoom leaves. [WCAG 2.2, 1.4.4]
  const context = await browser.newContext({
    viewport: { width: 640, height: 450 },
    javaScriptEnabled: false,
    // A page that glides is still on its way when it is looked at.
    reducedMotion: "reduce",
  });
  page = await context.newPage();
});

afterAll(async () => {
  await Promise.all([browser?.close(), house?.close()]);
});

const MOST_STEPS = 250;

/** What has the focus, as a reader with eyes and one without meets it. Given as text: tests know no browser types. */
const FOCUSED = `(() => {
  const at = document.activeElement;
  if (!at || at === document.body) return null;
  const { outlineStyle, outlineWidth } = getComputedStyle(at);
  const box = at.getBoundingClientRect();
  const hit = document.elementFromPoint(box.x + box.width / 2, box.y + Math.min(box.height / 2, 20));
  const label = at.labels?.[0]?.textContent ?? "";
  return {
    name: (at.getAttribute("aria-label") ?? (label || at.textContent)).replaceAll(/\\s+/g, " ").trim(),
    tag: at.tagName.toLowerCase(),
    isOutlined: outlineStyle !== "none" && parseFloat(outlineWidth) >= 2,
    isInSight: box.bottom > 0 && box.top < innerHeight && box.right > 0 && box.left < innerWidth,
    isCovered: hit !== null && hit !== at && !at.contains(hit) && !hit.contains(at) && hit.closest("label") === null,
  };
})()`;

interface Focused {
  readonly name: string;
  readonly tag: string;
  readonly isOutlined: boolean;
  readonly isInSight: boolean;
  readonly isCovered: boolean;
}

/** Steps on until the name comes up. Every stop on the way must be seen: outlined, in the window, under nothing. */
async function tabTo(name: RegExp, key: "Tab" | "Shift+Tab" = "Tab"): Promise<void> {
  for (let step = 0; step < MOST_STEPS; step++) {
    await page.keyboard.press(key);
    const at = (await page.evaluate(FOCUSED)) as Focused | null;
    if (at === null) continue;
    const { name: said, isOutlined, isInSight, isCovered } = at;
    expect({ said, isOutlined, isInSight, isCovered }).toEqual({
      said: expect.stringMatching(/\S/),
      isOutlined: true,
      isInSight: true,
      isCovered: false,
    });
    if (name.test(said)) return;
  }
  throw new Error(`${name} was not reached in ${MOST_STEPS} steps`);
}

async function open(path: string): Promise<void> {
  await page.goto(new URL(path, house.url).href);
}

/** Presses what leads to another page. */
const enter = async () => {
  await Promise.all([page.waitForEvent("load"), page.keyboard.press("Enter")]);
};

/** The five commonest journeys with no pointer at all, at 200 % zoom, without script. [WCAG 2.2, 2.1.1, 2.1.2, 2.4.3, 2.4.7, 2.4.11] */
describe("by keyboard alone", () => {
  it("the sections are skipped and the first deed ticked, then taken back", async () => {
    await open("/");
    await tabTo(/^To the page/);
    await page.keyboard.press("Enter");
    await tabTo(/^Done: /);
    const before = await page.locator(".deed .tick").count();
    await enter();
    expect(await page.locator(".deed .tick").count()).toBe(before - 1);
    await tabTo(/^Take back/);
    await enter();
    expect(await page.locator(".deed .tick").count()).toBe(before);
  });

  it("a pot is found on its shelf and a watering logged with its amount", async () => {
    await open("/");
    await tabTo(/^Pots$/);
    await enter();
    await tabTo(/^Leaf cactus$/);
    await enter();
    await tabTo(/^Watered$/);
    await enter();
    await tabTo(/^Poured/);
    await page.keyboard.type("350");
    await tabTo(/^Keep/);
    await enter();
    const newest = await page.locator("main .logged li").first().textContent();
    expect(newest?.replaceAll("\u00a0", " ")).toContain("350 ml");
  });

  it("a whole bench is watered, and all of it taken back", async () => {
    await open("/pots");
    await tabTo(/^All \d+ at Galley sill watered/);
    await enter();
    await tabTo(/^Take all of it back/);
    await enter();
    expect(await page.locator("#kept").count()).toBe(0);
  });

  it("two pots are chosen with the space bar and moved together", async () => {
    await open("/pots");
    await tabTo(/^Tick Leaf cactus/);
    await page.keyboard.press("Space");
    await tabTo(/^Tick Sill fig/, "Shift+Tab");
    await page.keyboard.press("Space");
    await tabTo(/^New spot/);
    await page.keyboard.type("Net");
    await tabTo(/^Moved to this spot/);
    await enter();
    expect(await page.locator("#kept").textContent()).toContain("Kept for 2 pots: Moved to Net loft");
  });

  it("a mix is tried in another vessel, and no table holds the focus fast", async () => {
    await open("/mixes/spar");
    await tabTo(/^Height/);
    await page.keyboard.press("Control+A");
    await page.keyboard.type("40");
    await tabTo(/^Show$/);
    await enter();
    expect(new URL(page.url()).searchParams.get("heightCm")).toBe("40");
    await open("/sky");
    await tabTo(/^At each spot|^Spot/);
    await tabTo(/^This house$/);
  });
});
