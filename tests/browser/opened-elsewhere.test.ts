import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { type Loopback, serveHttp } from "../service/feed/loopback-server.ts";
import { demoHouse, type HouseForPages } from "./house-for-pages.ts";
import { openBrowser } from "./open-browser.ts";

/*
 * What another page still holds of a window in which it opened ours: the HTML Standard, "Cross-origin opener policies".
 * A window it was parted from counts as closed for it, though it stands open.
 */

let browser: Browser;
let house: HouseForPages;
let elsewhere: Loopback;

beforeAll(async () => {
  [browser, house, elsewhere] = await Promise.all([
    openBrowser(),
    demoHouse(),
    serveHttp((_, answer) => answer.setHeader("content-type", "text/html").end("<title>Elsewhere</title>")),
  ]);
});

afterAll(async () => {
  await Promise.all([browser?.close(), house?.close(), elsewhere?.close()]);
});

/** Whether the grower has looked at the page before, and whether that left the worker in place. */
interface Before {
  readonly visited: boolean;
  readonly worker: boolean;
}

/** Whether a page at `from` still reaches the window that it opened at `to`. */
async function stillHeld(from: string, to: string, { visited, worker }: Before): Promise<boolean> {
  const context = await browser.newContext({ serviceWorkers: worker ? "allow" : "block" });
  const page = await context.newPage();
  if (visited) await page.goto(to);
  if (worker) await page.evaluate("navigator.serviceWorker.ready.then(() => null)");
  await page.goto(from);
  const [opened] = await Promise.all([
    context.waitForEvent("page"),
    page.evaluate(`void (window.held = open(${JSON.stringify(to)}))`),
  ]);
  await opened.locator("h1").waitFor();
  const held = !(await page.evaluate("held.closed"));
  await context.close();
  return held;
}

describe.each([
  ["at a first visit", { visited: false, worker: false }],
  ["looked at before", { visited: true, worker: false }],
  ["with the worker in place", { visited: true, worker: true }],
])("a page of ours, %s,", (_, before) => {
  it("is out of reach for the site that opened it, also for another service on the same machine", async () => {
    const ours = new URL("/pots", house.url);
    const otherSite = new URL(elsewhere.url);
    otherSite.hostname = "localhost";
    expect(await stillHeld(otherSite.href, ours.href, before)).toBe(false);
    expect(await stillHeld(elsewhere.url, ours.href, before)).toBe(false);
  });

  it("is not parted from a page of ours that opened it", async () => {
    expect(await stillHeld(house.url, new URL("/pots", house.url).href, before)).toBe(true);
  });
});
