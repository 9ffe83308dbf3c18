import { createHmac } from "node:crypto";
import { Webhook } from "standardwebhooks";
import { describe, expect, it } from "vitest";
import { deliverDue } from "../../../service/notify/deliver-due.ts";
import { planMessages } from "../../../service/notify/plan-messages.ts";
import { signatureHeaders, webhookChannel } from "../../../service/notify/webhook-channel.ts";
import { house } from "../jobs/bench-jobs.ts";
import { barePlan } from "../store/bare-plan.ts";
import { wayBy } from "./fixed-post.ts";
import { webEndpoint } from "./web-endpoint.ts";

const SECRET = Buffer.alloc(24, 5).toString("base64url");

async function called({ allowedHosts = ["127.0.0.1"], url }: { allowedHosts?: string[]; url?: string } = {}) {
  const endpoint = await webEndpoint();
  const made = await house();
  const { store, clock, parts } = made;
  // The checking library goes by the machine's clock.
  clock.nowUtcMs = Date.now();
  const stored = {
    id: "webhook-0123456789ab",
    personId: "ann",
    kind: "webhook",
    kinds: ["morning"],
    url: url ?? `${endpoint.url}/hook`,
    secret: SECRET,
  } as const;
  const rule = { allowedHosts, ca: endpoint.ca, timeoutMs: 1000 };
  const way = wayBy(webhookChannel({ ...stored, kinds: ["morning"] }, { rule, now: parts.now }));
  const plan = barePlan({
    nowUtcMs: clock.nowUtcMs,
    deeds: [{ potId: "p1", action: "water", amountMl: 500 }],
  });
  await store.outbox.add(
    planMessages({
      plan,
      collection: await store.collection("yard"),
      ways: [way],
      signing: parts.post.signing,
      houseId: store.houseId,
      nowUtcMs: clock.nowUtcMs,
      amendment: null,
    }),
  );
  const deliver = async (minutes = 0) => {
    clock.nowUtcMs += minutes * 60_000;
    await deliverDue({ ...parts, ways: [way] });
    return (await store.outbox.list("yard"))[0]!;
  };
  return { endpoint, deliver };
}

describe("the MAC of a call", () => {
  // RFC 4231 section 4.3, test case 2: the key is "Jefe", the data "what do ya want for nothing?".
  it("is the HMAC-SHA256 of RFC 4231", () => {
    const printed = "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843";
    expect(createHmac("sha256", "Jefe").update("what do ya want for nothing?").digest("hex")).toBe(printed);
    // The same primitive over id, seconds and body, put together as the convention says.
    const secret = Buffer.from("Jefe").toString("base64url");
    const headers = signatureHeaders({ id: "a", body: "b", secret, nowUtcMs: 1000 });
    const mac = createHmac("sha256", "Jefe").update("a.1.b").digest("base64");
    expect(headers["webhook-signature"]).toBe(`v1,${mac}`);
  });
});

describe("a call to another program", () => {
  it("is signed as an independent library checks it, and says what there is to do", async () => {
    const { endpoint, deliver } = await called();
    expect(await deliver()).toMatchObject({ state: "sent" });
    const { headers, body, path } = endpoint.received[0]!;
    expect(path).toBe("/hook");
    const checker = new Webhook(Buffer.from(SECRET, "base64url").toString("base64"));
    const told = checker.verify(body.toString("utf8"), headers as Record<string, string>) as Record<
      string,
      unknown
    >;
    expect(told).toMatchObject({
      version: 1,
      kind: "morning",
      siteId: "yard",
      title: expect.stringContaining("Yard"),
    });
    expect(told.deeds).toMatchObject([{ potId: "p1", action: "water", amountMl: 500, place: "Steps" }]);
    const bent = body.toString("utf8").replace("500", "900");
    expect(() => checker.verify(bent, headers as Record<string, string>)).toThrow();
    expect(JSON.stringify(told)).not.toMatch(/latDeg|lonDeg|48\.5|9\.25/);
  });

  it("refused with 500 is repeated under the same key, and then no more", async () => {
    const { endpoint, deliver } = await called();
    endpoint.answers.push(500, 200);
    expect(await deliver()).toMatchObject({ state: "waiting", lastFault: "webhook-busy" });
    expect(await deliver(1)).toMatchObject({ state: "sent" });
    await deliver(60);
    const keys = endpoint.received.map(({ headers }) => headers["idempotency-key"]);
    expect(keys).toHaveLength(2);
    expect(keys[0]).toBe(keys[1]);
    expect(endpoint.received[1]!.body).toEqual(endpoint.received[0]!.body);
  });

  it("follows nobody elsewhere", async () => {
    const { endpoint, deliver } = await called();
    endpoint.answers.push(`${endpoint.url}/elsewhere`);
    expect(await deliver()).toMatchObject({ state: "given-up", lastFault: "webhook-redirected" });
    expect(endpoint.received.map(({ path }) => path)).toEqual(["/hook"]);
  });

  it.each([
    [400, "given-up", "webhook-refused"],
    [404, "given-up", "webhook-refused"],
    [429, "waiting", "webhook-busy"],
  ])("answered with %i is %s", async (status, state, lastFault) => {
    const { endpoint, deliver } = await called();
    endpoint.answers.push(status);
    expect(await deliver()).toMatchObject({ state, lastFault });
  });

  it("goes into the own network only where the owner named the host", async () => {
    const { endpoint, deliver } = await called({ allowedHosts: [] });
    expect(await deliver()).toMatchObject({ state: "waiting", lastFault: "webhook-own-network" });
    expect(endpoint.received).toEqual([]);
    for (const url of ["http://10.0.0.7/", "http://[fd00::1]/", "http://169.254.169.254/latest"])
      expect(await (await called({ url })).deliver()).toMatchObject({ lastFault: "webhook-own-network" });
  });
});
