import { createECDH, randomBytes } from "node:crypto";
import { describe, expect, it, onTestFinished } from "vitest";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { beat } from "../../../service/jobs/beat.ts";
import { createLog } from "../../../service/log.ts";
import { openPost } from "../../../service/notify/post.ts";
import { pushKeys } from "../../../service/notify/push-keys.ts";
import { createApp } from "../../../service/pages/app.tsx";
import { houseWords } from "../../../service/words/house-words.ts";
import { house } from "../jobs/bench-jobs.ts";
import { barePlan } from "../store/bare-plan.ts";
import { fill, site } from "../store/bench.ts";
import { emptyStore } from "../store/test-store.ts";
import { postOffice } from "./post-office.ts";
import { webEndpoint } from "./web-endpoint.ts";

const LAT = 48.507316;
const LON = 9.253194;
const MAIL_PASSWORD = "Zq9-mail-word";
const HOOK_SECRET = Buffer.alloc(24, 9).toString("base64url");
const CALENDAR_SECRET = Buffer.alloc(24, 8).toString("base64url");

/** A morning that goes out by mail, notification and call, some of it refused, with everything that was said kept. */
async function morningOut() {
  const logged: string[] = [];
  const log = createLog(
    { level: "debug", secrets: [MAIL_PASSWORD] },
    { write: (line) => void logged.push(line) },
  );
  const office = await postOffice({
    allowInsecureAuth: true,
    onAuth: (_auth, _session, done) => done(null, { user: "me" }),
  });
  const endpoint = await webEndpoint();
  const store = await emptyStore();
  await fill(store, site({ latDeg: LAT, lonDeg: LON }));
  const words = houseWords({ locale: "en", units: "metric" });
  const device = createECDH("prime256v1");
  await store.people.put({ id: "ann", name: "Ann", locale: "en", units: "metric", quiet: null });
  const common = { personId: "ann", kinds: ["morning", "trouble"] as ("morning" | "trouble")[] };
  await store.channels.put({ ...common, id: "mail-0123456789ab", kind: "mail", address: "ann@host.example" });
  await store.channels.put({
    ...common,
    id: "calendar-0123456789ab",
    kind: "calendar",
    secret: CALENDAR_SECRET,
  });
  const url = `${endpoint.url}/hook`;
  await store.channels.put({
    ...common,
    id: "webhook-0123456789ab",
    kind: "webhook",
    url,
    secret: HOOK_SECRET,
  });
  await store.channels.put({
    ...common,
    id: "push-0123456789ab",
    kind: "push",
    endpoint: `${endpoint.url}/push`,
    p256dh: device.generateKeys().toString("base64url"),
    auth: randomBytes(16).toString("base64url"),
    device: "Firefox",
  });
  const made = await house({ store, log });
  const post = openPost({
    store,
    words,
    mail: { smtpUrl: office.url.replace("//", `//me:${MAIL_PASSWORD}@`), from: "bench@host.example", to: [] },
    publicUrl: "https://bench.example",
    outgoing: { allowedHosts: ["127.0.0.1"], ca: endpoint.ca },
    now: made.parts.now,
    write: () => undefined,
  });
  onTestFinished(() => post.close());
  made.planner.make = ({ nowUtcMs }) =>
    barePlan({ nowUtcMs, deeds: [{ potId: "p1", action: "water", amountMl: 500 }] });
  const parts = { ...made.parts, post };
  // The first tries are refused, so that the log tells of faults too.
  office.answers.push(451);
  endpoint.answers.push(500, 500);
  await beat(parts);
  made.clock.nowUtcMs += 120_000;
  await beat(parts);
  return { logged, office, endpoint, store, post, parts, log };
}

describe("what a morning tells others", () => {
  it("is no secret, no exact coordinate and no token in logs, heads of mails, and addresses and heads of calls", async () => {
    const { logged, office, endpoint, store, parts, log } = await morningOut();
    const app = createApp({ ...parts, feed: DEFAULT_FEED_SETTINGS, replan: async () => undefined });
    app.onError((error, c) => {
      log.error({ event: "request-broke", path: c.req.path, error });
      return c.text("", 500);
    });
    expect(office.received).toHaveLength(1);
    expect(endpoint.received.filter(({ path }) => path === "/push")).toHaveLength(2);
    expect(endpoint.received.filter(({ path }) => path === "/hook")).toHaveLength(2);
    const [mail] = office.received;
    const tokens = [...`${mail?.text}`.matchAll(/\/answer\/([\w.-]+)/g)].map(([, token = ""]) => token);
    expect(tokens).toHaveLength(3);
    // A broken page names its address in the log.
    store.plans.madeAt = async () => {
      throw new Error(`no plan for /answer/${tokens[0]}`);
    };
    await app.request(`/answer/${tokens[0]}`);
    expect(logged.some((line) => line.includes("request-broke"))).toBe(true);
    const heads = mail!.headerLines.map(({ line }) => line);
    const stop = heads.filter((line) => line.startsWith("List-Unsubscribe:"));
    expect(stop).toHaveLength(1);
    const seen = [
      ...logged,
      ...heads.filter((line) => !stop.includes(line)),
      ...endpoint.received.map(({ path, headers }) => `${path} ${JSON.stringify(headers)}`),
    ].join("\n");
    const secrets = [
      MAIL_PASSWORD,
      Buffer.from(MAIL_PASSWORD).toString("base64"),
      HOOK_SECRET,
      CALENDAR_SECRET,
      store.house.linkKey.toString("base64url"),
      store.house.linkKey.toString("hex"),
      pushKeys(store.house).privateKey,
      ...tokens,
      "48.50",
      "9.25",
    ];
    for (const secret of secrets) expect(seen.includes(secret), secret).toBe(false);
    // The link that stops mail can do nothing else: it names a way, not a person, and carries no other token.
    expect(stop[0]).toMatch(/^List-Unsubscribe:\s+<https:\/\/bench\.example\/stop-mail\/[\w.-]+>$/);
    for (const secret of [...tokens, HOOK_SECRET, CALENDAR_SECRET]) expect(stop[0]).not.toContain(secret);
    // Logs name no address of a person.
    expect(logged.join("\n")).not.toContain("ann@host.example");
  });

  it("is no coordinate in the bodies either", async () => {
    const { office, endpoint } = await morningOut();
    const bodies = [
      office.received[0]?.text,
      String(office.received[0]?.html),
      ...endpoint.received.map(({ body }) => body.toString("utf8")),
    ].join("\n");
    expect(bodies).toContain("Lemon");
    expect(bodies).not.toMatch(/48\.50|9\.253/);
  });
});
