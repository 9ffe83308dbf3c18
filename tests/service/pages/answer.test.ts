import { describe, expect, it } from "vitest";
import { answerLinks } from "../../../service/notify/answer-links.ts";
import { signedLink } from "../../../service/notify/signed-link.ts";
import { guardedHouse } from "../access/guarded-house.ts";
import { collection, plan } from "../brief/plan-builder.ts";
import { barePlan } from "../store/bare-plan.ts";
import { houseOf, NOW_UTC_MS } from "./house-of.ts";

const LEMON = { potId: "lemon", action: "water" };
const MIXES = [
  { id: "m", name: "Gritty", recipe: { kind: "parts" as const, parts: [{ component: "grit", parts: 1 }] } },
];

async function answered(personId = "house") {
  const made = await houseOf({ collection: { ...collection, mixes: MIXES }, plan: plan() });
  const links = answerLinks({
    plan: plan(),
    madeUtcMs: Date.parse(plan().issuedAt),
    personId,
    key: made.store.house.linkKey,
    publicUrl: null,
  });
  const entries = async () =>
    (await made.store.journal.list("quay")).map(({ id, potId, body }) => ({ id, potId, body }));
  return { ...made, links, entries };
}

describe("an answer by link", () => {
  it("asks first: looking changes nothing", async () => {
    const { links, get, entries, planned } = await answered();
    const { status, text } = await get(links.path("done"));
    expect(status).toBe(200);
    expect(text).toContain("2 deeds of Wednesday 12 May. Nothing is noted until you press the button.");
    expect(text).toContain("Lemon (3 pots), 850 ml each, by 09:00");
    expect(text).toContain("Carry under cover: Plumeria");
    // What could hurt stands where the deed stands.
    expect(text).toContain("two people");
    expect(await entries()).toEqual([]);
    expect(planned).toEqual([]);
  });

  it("notes the whole list as done, once, however often it is sent", async () => {
    const { links, send, entries, get, planned } = await answered();
    const path = links.path("done");
    expect((await send(path, {})).status).toBe(303);
    const first = await entries();
    expect(first.map(({ potId, body }) => [potId, body])).toEqual([
      ["lemon", { kind: "watered", given: { kind: "measured", waterMl: 850 } }],
      ["plumeria", { kind: "moved", toSpotId: "shed" }],
    ]);
    await send(path, {});
    await send(links.path("done", LEMON), {});
    expect(await entries()).toEqual(first);
    expect(planned).toEqual(["quay"]);
    expect((await get(path)).text).toContain("Everything of Wednesday 12 May is noted.");
  });

  it("sent twice at the same moment is one entry", async () => {
    const { links, send, entries } = await answered();
    await Promise.all([1, 2, 3].map(() => send(links.path("done", LEMON), {})));
    expect(await entries()).toHaveLength(1);
  });

  it("is good for one deed where it was made for one", async () => {
    const { links, send, entries, get } = await answered();
    const { text } = await get(links.path("done", LEMON));
    expect(text).not.toContain("Plumeria");
    await send(links.path("done", LEMON), { "done.1": "1", purpose: "log", potId: "plumeria" });
    expect((await entries()).map(({ potId }) => potId)).toEqual(["lemon"]);
  });

  it("leaves what was ticked on the page alone, and notes anew what was taken back", async () => {
    const { links, send, entries } = await answered();
    const deed = new URLSearchParams({ entryId: "tick.water.0123456789", potId: "lemon", action: "water" });
    await send("/done", { deed: deed.toString() });
    await send(links.path("done", LEMON), {});
    expect(await entries()).toHaveLength(1);
    await send("/undo", { entryId: "undo.0123456789", ofEntryId: "tick.water.0123456789" });
    await send(links.path("done", LEMON), {});
    const [, , byLink] = await entries();
    expect(byLink?.body).toEqual({ kind: "watered", given: { kind: "measured", waterMl: 850 } });
    await send("/undo", { entryId: "undo.1123456789", ofEntryId: byLink!.id });
    await send(links.path("done", LEMON), {});
    expect((await entries()).filter(({ body }) => body.kind === "watered")).toHaveLength(3);
  });

  it("'not today' stands in the diary and leaves the deed open", async () => {
    const { links, send, entries, get } = await answered();
    await send(links.path("not-today"), {});
    await send(links.path("not-today"), {});
    const bodies = (await entries()).map(({ body }) => body);
    expect(bodies).toHaveLength(2);
    expect(bodies[0]).toMatchObject({ kind: "note" });
    expect(JSON.stringify(bodies[0])).toContain("Not today: Water: Lemon");
    expect((await get(links.path("not-today"))).text).toContain("noted as left today");
    expect((await get(links.path("done"))).text).toContain("2 deeds of");
    await send(links.path("done", LEMON), {});
    expect((await entries()).at(-1)?.body).toMatchObject({ kind: "watered" });
  });

  it("logs what was really done: ticked pots only, with their own amounts", async () => {
    const { links, send, entries, get } = await answered();
    const { text } = await get(links.path("log"));
    expect(text).toMatch(/name="waterMl\.0"[^>]*value="850"/);
    const wrong = await send(links.path("log"), { "done.0": "1", "waterMl.0": "much" });
    expect(wrong.status).toBe(422);
    expect(wrong.text).toContain('value="much"');
    await send(links.path("log"), { "done.0": "1", "waterMl.0": "600" });
    expect((await entries()).map(({ potId, body }) => [potId, body])).toEqual([
      ["lemon", { kind: "watered", given: { kind: "measured", waterMl: 600 } }],
    ]);
    await send(links.path("log"), { "done.0": "1", "waterMl.0": "600", "done.1": "1" });
    expect((await entries()).map(({ potId }) => potId)).toEqual(["lemon", "plumeria"]);
  });

  it("that was bent, is over, or is of a person no longer here says what to do instead", async () => {
    const { links, send, get, entries, store } = await answered("ann");
    expect(await get("/answer/nothing.good")).toMatchObject({ status: 404 });
    const gone = await get(links.path("done"));
    expect(gone.status).toBe(404);
    expect(gone.text).toContain("Open Leebench itself and tick there.");
    await store.people.put({ id: "ann", name: "Ann", locale: "en", units: "metric", quiet: null });
    expect((await get(links.path("done"))).status).toBe(200);
    const over = signedLink(
      {
        purpose: "done",
        personId: "ann",
        siteId: "quay",
        madeUtcMs: Date.parse(plan().issuedAt),
        deed: null,
        expiresUtcMs: NOW_UTC_MS - 1,
      },
      store.house.linkKey,
    );
    expect(await send(`/answer/${over}`, {})).toMatchObject({ status: 410 });
    expect(await entries()).toEqual([]);
  });

  it("lasts to the end of the next day at the site", () => {
    const key = Buffer.alloc(32);
    const links = answerLinks({
      plan: plan(),
      madeUtcMs: 0,
      personId: "house",
      key,
      publicUrl: "https://b.example",
    });
    expect(links.address("done")).toBe(`https://b.example${links.path("done")}`);
    const [body = ""] = links.path("done").replace("/answer/", "").split(".");
    const [, , , , expiresUtcMs] = JSON.parse(Buffer.from(body, "base64url").toString());
    expect(new Date(expiresUtcMs).toISOString()).toBe("2027-05-13T22:00:00.000Z");
  });
});

describe("in a guarded house a link", () => {
  it("works without signing in and opens nothing else", async () => {
    const { app, store, clock, parts, post } = await guardedHouse({
      LEEBENCH_PASSPHRASE: "a long enough phrase",
    });
    const asked = barePlan({
      nowUtcMs: clock.nowUtcMs,
      deeds: [{ potId: "p1", action: "water", amountMl: 500 }],
    });
    await store.plans.save(asked, { kind: "morning", madeUtcMs: clock.nowUtcMs });
    const links = answerLinks({
      ...parts.post.signing,
      plan: asked,
      madeUtcMs: clock.nowUtcMs,
      personId: "house",
    });
    const shown = await app.request(links.path("done"));
    expect(shown.status).toBe(200);
    expect(shown.headers.get("cache-control")).toBe("no-store");
    const text = await shown.text();
    // No way from the sheet to a page that the link does not open.
    expect([...text.matchAll(/(?:href|src|action)="([^"]*)"/g)].map(([, to]) => to)).toEqual(["/style.css"]);
    expect((await app.request("/style.css")).status).toBe(200);
    for (const address of ["/", "/pots", "/journal", "/house", "/people", `${links.path("done")}/../../pots`])
      expect([303, 401], address).toContain((await app.request(address)).status);
    expect((await post(links.path("done"), {})).status).toBe(303);
    expect((await store.journal.list("yard")).at(-1)).toMatchObject({
      potId: "p1",
      body: { kind: "watered" },
    });
    const elsewhere = { "sec-fetch-site": "cross-site" };
    expect((await post(links.path("not-today"), {}, elsewhere)).status).toBe(403);
  });
});

describe("what scripts and calendars fetch", () => {
  it("is the brief as text", async () => {
    const { get } = await answered();
    const { status, text } = await get("/brief.txt");
    expect(status).toBe(200);
    expect(text).toMatch(/^Wednesday 12 May at Low Quay\n=+\n/);
    expect(text).toContain("[ ] Water: Lemon (3 pots)");
  });

  it("is the calendar at its secret address, until a new one is made", async () => {
    const { get, send, store } = await answered();
    await store.people.put({ id: "ann", name: "Ann", locale: "es", units: "metric", quiet: null });
    await send("/people/ann/channels", { kind: "calendar" });
    const secret = async () =>
      (await store.channels.list()).flatMap((one) => (one.kind === "calendar" ? [one] : []))[0]!;
    const first = await secret();
    // RFC 4086 section 8.2.2 holds 128 bits to be out of reach of guessing.
    expect(Buffer.from(first.secret, "base64url").length * 8).toBeGreaterThanOrEqual(128);
    expect((await get("/people/ann")).text).toContain(`/calendar/${first.secret}.ics`);
    const { status, text } = await get(`/calendar/${first.secret}.ics`);
    expect([status, text.startsWith("BEGIN:VCALENDAR")]).toEqual([200, true]);
    await send(`/people/ann/channels/${first.id}/renew`, {});
    expect((await get(`/calendar/${first.secret}.ics`)).status).toBe(404);
    expect((await get(`/calendar/${(await secret()).secret}.ics`)).status).toBe(200);
    await store.people.remove("ann");
    expect((await get(`/calendar/${first.secret}.ics`)).status).toBe(404);
  });
});

describe("stopping mail", () => {
  async function withMail() {
    const made = await answered();
    await made.store.people.put({ id: "ann", name: "Ann", locale: "en", units: "metric", quiet: null });
    const channel = {
      id: "mail-0123456789ab",
      personId: "ann",
      kind: "mail",
      address: "ann@host.example",
    } as const;
    await made.store.channels.put({ ...channel, kinds: ["morning"] });
    const token = signedLink({ purpose: "stop-mail", channelId: channel.id }, made.store.house.linkKey);
    const kinds = async () => (await made.store.channels.get(channel.id))?.kinds;
    return { ...made, kinds, path: `/stop-mail/${token}` };
  }

  it("asks on the page, and does at once what a mail program posts (RFC 8058 section 3.2)", async () => {
    const { get, send, kinds, path } = await withMail();
    expect((await get(path)).text).toContain("Press the button and no more mail goes to this address.");
    expect(await kinds()).toEqual(["morning"]);
    const stopped = await send(path, { "List-Unsubscribe": "One-Click" });
    // RFC 8058 section 3.1: no redirect.
    expect(stopped.status).toBe(200);
    expect(await kinds()).toEqual([]);
    expect((await get(path)).text).toContain("No more mail goes to this address.");
  });

  it("takes no link that is good for something else, and the other way round", async () => {
    const { send, kinds, links, path, entries } = await withMail();
    const done = links.path("done").replace("/answer/", "/stop-mail/");
    expect((await send(done, {})).status).toBe(404);
    expect((await send(path.replace("/stop-mail/", "/answer/"), {})).status).toBe(404);
    expect(await kinds()).toEqual(["morning"]);
    expect(await entries()).toEqual([]);
  });
});
