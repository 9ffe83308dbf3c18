import { join } from "node:path";
import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
import { demoCollection } from "../../demo/harbour.ts";
import type { RunningDemo } from "../../demo/start-demo.ts";
import { answerLinks } from "../../service/notify/answer-links.ts";
import { HOUSE_PERSON } from "../../service/notify/post.ts";
import { openStore } from "../../service/store/open-store.ts";
import { STORE_NAME } from "../../service/store/store-names.ts";
import { demoHouse } from "./house-for-pages.ts";
import { openBrowser } from "./open-browser.ts";

let browser: Browser;
let house: RunningDemo;

beforeAll(async () => {
  [browser, house] = await Promise.all([openBrowser(), demoHouse()]);
});

afterAll(async () => {
  await Promise.all([browser?.close(), house?.close()]);
});

/** What a browser's own service would hand out; the keys are those of RFC 8291 appendix A. */
const SUBSCRIPTION = {
  endpoint: "https://push.invalid/x",
  keys: {
    p256dh: "BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4",
    auth: "BTBZMqHH6r4Tts7J_aSIgg",
  },
};

interface Answer {
  readonly action: string;
  readonly title: string;
  readonly path: string;
}

/** Hands a message to the worker of the page, as the browser's own service would. */
async function push(page: Page, answers: readonly Answer[]): Promise<void> {
  const tools = await page.context().newCDPSession(page);
  const registered = new Promise<string>((resolve) => {
    tools.on("ServiceWorker.workerRegistrationUpdated", ({ registrations: [first] }) => {
      if (first) resolve(first.registrationId);
    });
  });
  await tools.send("ServiceWorker.enable");
  const data = JSON.stringify({ title: "Water: 3", text: "Three deeds.", tag: "t", lang: "en", answers });
  const { origin } = new URL(house.url);
  await tools.send("ServiceWorker.deliverPushMessage", { origin, registrationId: await registered, data });
}

/**
 * Hands a notice over until it is shown. A busy browser now and then drops what the tools hand it; the same notice handed
 * over again is still one. It is only handed over again long after: one that comes late would be shown anew once it was
 * pressed.
 */
async function handOver(
  page: Page,
  { answers, shownCount }: { answers: readonly Answer[]; shownCount: () => Promise<number> },
): Promise<void> {
  const shownOrHanded = async () => {
    const count = await shownCount();
    if (count > 0) return count;
    await push(page, answers);
    return shownCount();
  };
  await expect.poll(shownOrHanded, { interval: 4000, timeout: 20_000 }).toBe(1);
}

it("a device is subscribed on its page, and its worker shows what is pushed, with two buttons", async () => {
  const context = await browser.newContext();
  const origin = new URL(house.url).origin;
  await context.grantPermissions(["notifications"], { origin });
  // Tests are compiled for Node's types, so what runs in the browser is given as text.
  const given = JSON.stringify(SUBSCRIPTION);
  await context.addInitScript(
    `PushManager.prototype.subscribe = async () => ({ toJSON: () => (${given}) });`,
  );
  const page = await context.newPage();
  await page.goto(new URL("/people", house.url).href);
  await page.fill("[name=name]", "Mara");
  await page.click('form[action="/people"] button[type=submit]');
  await page.evaluate("navigator.serviceWorker.ready.then(() => true)");
  await page.click(".push-form button");
  await page.waitForSelector(".channel-address");
  expect(await page.textContent(".channel-address")).toBe("Chrome, Linux");

  const answers = [
    { action: "done", title: "All done", path: "/answer/a.b" },
    { action: "not-today", title: "Not today", path: "/answer/c.d" },
  ];
  const shown = () =>
    page.evaluate<unknown[]>(`navigator.serviceWorker.ready
      .then((worker) => worker.getNotifications())
      .then((notices) => notices.map(({ title, body, tag, actions }) =>
        ({ title, body, tag, buttons: actions.map((button) => button.title) })))`);
  await handOver(page, { answers, shownCount: async () => (await shown()).length });
  expect(await shown()).toEqual([
    { title: "Water: 3", body: "Three deeds.", tag: "t", buttons: ["All done", "Not today"] },
  ]);
  await context.close();
});

/** Presses a button of the one notice that is shown; the event is made here, so that its waiting is kept by hand. */
const PRESS = `(async () => {
  const [notice] = await registration.getNotifications();
  const event = new NotificationEvent("notificationclick", { notification: notice, action: "done" });
  const waits = [];
  Object.defineProperty(event, "waitUntil", { value: (wait) => waits.push(wait) });
  dispatchEvent(event);
  await Promise.all(waits);
})()`;

it("a button of a notice that is pressed answers the brief, once, by its signed way", async () => {
  const store = await openStore(join(house.dataDir, STORE_NAME));
  const context = await browser.newContext();
  await context.grantPermissions(["notifications"], { origin: new URL(house.url).origin });
  const page = await context.newPage();
  await page.goto(house.url);
  await page.evaluate("navigator.serviceWorker.ready.then(() => true)");
  const siteId = demoCollection.site.id;
  const { plan, madeUtcMs } = (await store.plans.latestStored(siteId))!;
  const of = { plan, madeUtcMs, personId: HOUSE_PERSON, key: store.house.linkKey, publicUrl: null };
  const deeds = await page.locator(".deed .tick").count();
  const [worker] = context.serviceWorkers();
  const shown = () => worker?.evaluate<number>("registration.getNotifications().then((all) => all.length)");
  const answers = [{ action: "done", title: "All done", path: answerLinks(of).path("done") }];
  await handOver(page, { answers, shownCount: async () => (await shown()) ?? 0 });
  const before = (await store.journal.list(siteId)).length;
  await worker?.evaluate(PRESS);
  await expect.poll(shown).toBe(0);
  expect((await store.journal.list(siteId)).length - before).toBe(deeds);
  expect(deeds).toBeGreaterThan(0);
  await context.close();
  await store.close();
});
