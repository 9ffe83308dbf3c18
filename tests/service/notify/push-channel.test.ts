import { createECDH, createPublicKey, randomBytes, verify } from "node:crypto";
import { describe, expect, it } from "vitest";
import { deliverDue } from "../../../service/notify/deliver-due.ts";
import { planMessages } from "../../../service/notify/plan-messages.ts";
import { pushChannel } from "../../../service/notify/push-channel.ts";
import { pushKeys } from "../../../service/notify/push-keys.ts";
import type { StoredChannelOf } from "../../../service/store/person.ts";
import { house } from "../jobs/bench-jobs.ts";
import { barePlan } from "../store/bare-plan.ts";
import { wayBy } from "./fixed-post.ts";
import { openSealed, type Subscriber } from "./sealed-message.ts";
import { webEndpoint } from "./web-endpoint.ts";

function subscriber(): Subscriber {
  const own = createECDH("prime256v1");
  const publicKey = own.generateKeys();
  return { privateKey: own.getPrivateKey(), publicKey, auth: randomBytes(16) };
}

/** A device subscribed at a push service on loopback, with a morning's brief in the outbox for it. */
async function subscribed() {
  const endpoint = await webEndpoint();
  const made = await house();
  const { store, clock, parts } = made;
  const device = subscriber();
  const stored: StoredChannelOf<"push"> = {
    id: "push-0123456789ab",
    personId: "ann",
    kind: "push",
    kinds: ["morning"],
    endpoint: `${endpoint.url}/send/abc`,
    p256dh: device.publicKey.toString("base64url"),
    auth: device.auth.toString("base64url"),
    device: "Firefox, Android",
  };
  await store.people.put({ id: "ann", name: "Ann", locale: "en", units: "metric", quiet: null });
  await store.channels.put(stored);
  const keys = pushKeys(store.house);
  const rule = { allowedHosts: ["127.0.0.1"], ca: endpoint.ca, timeoutMs: 1000 };
  const channel = pushChannel(stored, {
    keys: () => keys,
    contact: "mailto:a@host.example",
    rule,
    now: parts.now,
  });
  const way = wayBy(channel, { personId: "ann" });
  const plan = barePlan({
    nowUtcMs: clock.nowUtcMs,
    deeds: [{ potId: "p1", action: "water", amountMl: 500 }],
  });
  const messages = planMessages({
    plan,
    collection: await store.collection("yard"),
    ways: [way],
    signing: parts.post.signing,
    houseId: store.houseId,
    nowUtcMs: clock.nowUtcMs,
    amendment: null,
  });
  await store.outbox.add(messages);
  const deliver = async (minutes = 0) => {
    clock.nowUtcMs += minutes * 60_000;
    await deliverDue({ ...parts, ways: [way] });
    return (await store.outbox.list("yard"))[0]!;
  };
  return { ...made, endpoint, device, keys, deliver };
}

describe("opening a sealed message", () => {
  // RFC 8291 section 5 and appendix A, read from memory; the seal of the message itself shows that no digit is wrong.
  it("gives the text of the worked example of RFC 8291", () => {
    const bytes = (text: string) => Buffer.from(text, "base64url");
    const body = bytes(
      "DGv6ra1nlYgDCS1FRnbzlwAAEABBBP4z9KsN6nGRTbVYI_c7VJSPQTBtkgcy27mlmlMoZIIgDll6e3vCYLocInmYWAmS6TlzAC8wEqKK6PBru3jl7A_yl95bQpu6cVPTpK4Mqgkf1CXztLVBSt2Ks3oZwbuwXPXLWyouBWLVWGNWQexSgSxsj_Qulcy4a-fN",
    );
    const receiver = {
      privateKey: bytes("q1dXpw3UpT5VOmu_cf_v6ih07Aems3njxI-JWgLcM94"),
      publicKey: bytes(
        "BCVxsr7N_eNgVRqvHtD0zTZsEc6-VV-JvLexhqUzORcxaOzi6-AYWXvTBHm4bjyPjs7Vd8pZGH6SRpkNtoIAiw4",
      ),
      auth: bytes("BTBZMqHH6r4Tts7J_aSIgg"),
    };
    expect(openSealed(body, receiver)).toBe("When I grow up, I want to be a watermelon");
  });
});

describe("a notification", () => {
  it("reaches the device sealed, with its buttons, and nothing of it can be read on the way", async () => {
    const { endpoint, device, deliver } = await subscribed();
    expect(await deliver()).toMatchObject({ state: "sent" });
    const [pushed] = endpoint.received;
    const content = JSON.parse(openSealed(pushed!.body, device));
    expect(content).toMatchObject({ title: "Water: 1", tag: "morning-2031-05-02", lang: "en" });
    expect(content.text.replaceAll("\u00a0", " ")).toContain("Water: Lemon, 500 ml.");
    expect(
      content.answers.map(({ title, path }: { title: string; path: string }) => [title, path.slice(0, 8)]),
    ).toEqual([
      ["All done", "/answer/"],
      ["Not today", "/answer/"],
    ]);
    expect(pushed!.body.includes("Lemon")).toBe(false);
    expect(JSON.stringify(pushed!.headers)).not.toMatch(/Lemon|Yard|answer/);
    // RFC 8030 section 5.1: a service need take no more.
    expect(pushed!.body.length).toBeLessThanOrEqual(4096);
  });

  it("says how long, how urgent and about what (RFC 8030 sections 5.2 to 5.4), and by whom (RFC 8292)", async () => {
    const { endpoint, keys, deliver } = await subscribed();
    await deliver();
    const { headers, path } = endpoint.received[0]!;
    expect(path).toBe("/send/abc");
    expect(headers).toMatchObject({
      ttl: String(23 * 3600),
      urgency: "normal",
      topic: "morning-2031-05-02",
      "content-encoding": "aes128gcm",
    });
    const [, token = "", key] = /^vapid t=([^,]+), *k=(.+)$/.exec(String(headers.authorization)) ?? [];
    expect(key).toBe(keys.publicKey);
    const [head = "", claims = "", signature = ""] = token.split(".");
    const point = Buffer.from(keys.publicKey, "base64url");
    const [x, y] = [point.subarray(1, 33), point.subarray(33)].map((part) => part.toString("base64url"));
    const publicKey = createPublicKey({ key: { kty: "EC", crv: "P-256", x, y }, format: "jwk" });
    // RFC 7518 section 3.4: both halves of the signature, one after the other.
    const how = { key: publicKey, dsaEncoding: "ieee-p1363" } as const;
    const isSigned = verify(
      "sha256",
      Buffer.from(`${head}.${claims}`),
      how,
      Buffer.from(signature, "base64url"),
    );
    expect(isSigned).toBe(true);
    expect(JSON.parse(Buffer.from(claims, "base64url").toString())).toMatchObject({
      aud: endpoint.url,
      sub: "mailto:a@host.example",
    });
  });

  it("is tried again when the service is busy, and arrives once", async () => {
    const { endpoint, deliver } = await subscribed();
    endpoint.answers.push(503);
    expect(await deliver()).toMatchObject({ state: "waiting", lastFault: "push-busy" });
    expect(await deliver(1)).toMatchObject({ state: "sent" });
    await deliver(60);
    expect(endpoint.received).toHaveLength(2);
  });

  it.each([404, 410])("ends with %i: the way is taken away, the message given up", async (status) => {
    const { endpoint, deliver, store } = await subscribed();
    endpoint.answers.push(status);
    expect(await deliver()).toMatchObject({ state: "given-up", lastFault: "push-gone" });
    expect(await store.channels.list()).toEqual([]);
    await deliver(60);
    expect(endpoint.received).toHaveLength(1);
  });

  it("is sealed with keys that are the same after every start", async () => {
    const { keys, store } = await subscribed();
    expect(pushKeys(store.house)).toEqual(keys);
  });
});
