import type { Browser } from "playwright-core";
import { afterAll, beforeAll, expect, it } from "vitest";
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

/** What a browser's own service would hand out; the keys are those of RFC 8291 appendix A. */
const SUBSCRIPTION = {
  endpoint: "https://push.invalid/x",
  keys: {
    p256dh: "BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4",
    auth: "BTBZMqHH6r4Tts7J_aSIgg",
  },
};

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

  const tools = await context.newCDPSession(page);
  const registered = new Promise<string>((resolve) => {
    tools.on("ServiceWorker.workerRegistrationUpdated", ({ registrations: [first] }) => {
      if (first) resolve(first.registrationId);
    });
  });
  await tools.send("ServiceWorker.enable");
  const answers = [
    { action: "done", title: "All done", path: "/answer/a.b" },
    { action: "not-today", title: "Not today", path: "/answer/c.d" },
  ];
  const data = JSON.stringify({ title: "Water: 3", text: "Three deeds.", tag: "t", lang: "en", answers });
  const registrationId = await registered;
  await tools.send("ServiceWorker.deliverPushMessage", { origin, registrationId, data });
  const shown = () =>
    page.evaluate(`navigator.serviceWorker.ready
      .then((worker) => worker.getNotifications())
      .then((notices) => notices.map(({ title, body, tag, actions }) =>
        ({ title, body, tag, buttons: actions.map((button) => button.title) })))`);
  await expect
    .poll(shown, { timeout: 5000 })
    .toEqual([{ title: "Water: 3", body: "Three deeds.", tag: "t", buttons: ["All done", "Not today"] }]);
  await context.close();
});
