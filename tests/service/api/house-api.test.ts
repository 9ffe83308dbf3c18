import { writeFileSync } from "node:fs";
import { join } from "node:path";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import type { DeskAsk, ReplayDesk } from "../../../service/replay/replay-desk.ts";
import { checkStoreFile } from "../../../service/store/check-store-file.ts";
import { tempFolder } from "../store/test-store.ts";
import { apiHouse } from "./ask-api.ts";

const codes = ({ json }: { json: { problems?: { code: string }[] } }) =>
  json.problems?.map(({ code }) => code);

describe("who may come in", () => {
  it("is let in with a code told once, signed out, and let in no more", async () => {
    const { ask, store, app } = await apiHouse();
    const made = await ask("POST", "/accounts", { body: { name: "Bo", role: "helper" } });
    expect(made.status).toBe(201);
    expect(JSON.stringify((await ask("GET", "/accounts")).json)).not.toContain(made.json.code);
    expect(codes(await ask("POST", "/accounts", { body: { name: "bo", role: "viewer" } }))).toEqual([
      "account-name-taken",
    ]);
    expect((await ask("POST", "/accounts", { body: { name: "Me", role: "owner" } })).status).toBe(422);
    const account = `/accounts/${made.json.id}`;
    const fresh = (await ask("POST", `${account}/code`)).json.code;
    expect(fresh).not.toBe(made.json.code);
    const session = {
      digest: "d",
      accountId: made.json.id,
      stamp: "",
      device: "",
      createdUtcMs: 1,
      seenUtcMs: 1,
    };
    await store.sessions.add(session);
    expect((await ask("POST", `${account}/sign-out`)).status).toBe(204);
    expect(await store.sessions.ofAccount(made.json.id)).toEqual([]);
    expect((await ask("DELETE", account)).status).toBe(204);
    expect((await ask("DELETE", "/accounts/owner")).status).toBe(404);
    expect((await app.request("/api/v1/accounts")).status).toBe(200);
  });

  it("by a token lasts as long as was said, and not when it is taken back", async () => {
    const { ask, store, app, clock, signedIn } = await apiHouse();
    const owner = { headers: await signedIn("owner") };
    const make = { ...owner, body: { name: "scale", role: "viewer", days: 2 } };
    const { json } = await ask("POST", "/tokens", make);
    const as = async () =>
      (await app.request("/pots", { headers: { authorization: `Bearer ${json.token}` } })).status;
    expect(await as()).toBe(200);
    expect(JSON.stringify(await store.tokens.list())).not.toContain(json.token);
    expect(JSON.stringify((await ask("GET", "/tokens", owner)).json)).not.toContain(json.token);
    clock.nowUtcMs += 2 * 86_400_000 + 1;
    expect(await as()).toBe(401);
    expect((await ask("DELETE", `/tokens/${json.id}`, owner)).status).toBe(204);
    expect(await store.tokens.list()).toEqual([]);
    expect((await ask("POST", "/tokens", { ...make, body: { ...make.body, days: 731 } })).status).toBe(422);
  });
});

describe("photos", () => {
  it("are kept small with their entry, listed until that is undone, and told what is wrong with them", async () => {
    const { ask, app, store } = await apiHouse();
    const drawn = sharp({ create: { width: 3000, height: 1500, channels: 3, background: "#375" } });
    const bytes = Uint8Array.from(await drawn.jpeg().toBuffer());
    const send = (body: Uint8Array, type = "image/jpeg", query = "?text=Pale") =>
      ask("POST", `/sites/yard/pots/p1/photos${query}`, { body, headers: { "content-type": type } });
    const { status, json } = await send(bytes);
    expect([status, json]).toEqual([
      201,
      expect.objectContaining({ text: "Pale", widthPx: 1280, heightPx: 640 }),
    ]);
    const picture = await app.request(`/api/v1/sites/yard/photos/${json.id}`);
    expect(picture.headers.get("content-type")).toBe("image/webp");
    expect((await sharp(Buffer.from(await picture.arrayBuffer())).metadata()).width).toBe(1280);
    expect((await ask("GET", "/sites/yard/photos?potId=p1")).json.items).toEqual([json]);
    expect((await ask("GET", "/sites/yard/photos?potId=p2")).json.items).toEqual([]);
    await ask("POST", `/sites/yard/journal/${json.entryId}/undo`);
    expect((await ask("GET", "/sites/yard/photos")).json.items).toEqual([]);
    const before = await store.journal.list("yard");
    expect(codes(await send(new Uint8Array(20)))).toEqual(["not-a-photo"]);
    expect(codes(await send(bytes, "image/jpeg", "?at=2099-01-01T00:00Z"))).toEqual(["day-to-come"]);
    expect((await send(bytes, "image/gif")).status).toBe(415);
    expect((await send(new Uint8Array(17 * 2 ** 20))).status).toBe(413);
    expect(await store.journal.list("yard")).toEqual(before);
  });
});

describe("copies", () => {
  it("are made, counted, listed, and download as a store that opens", async () => {
    const { ask, app } = await apiHouse({ backupDir: tempFolder() });
    const made = await ask("POST", "/copies");
    expect([made.status, made.json.counts]).toEqual([201, expect.objectContaining({ pot: 1, site: 1 })]);
    const { name, bytes } = made.json;
    expect((await ask("GET", "/copies")).json.items).toEqual([{ name, bytes }]);
    const answer = await app.request(`/api/v1/copies/${name}`);
    expect(answer.headers.get("cache-control")).toBe("no-store");
    const file = join(tempFolder(), "copy.db");
    writeFileSync(file, new Uint8Array(await answer.arrayBuffer()));
    expect(checkStoreFile(file).counts).toMatchObject({ pot: 1, journal: 1 });
    for (const path of ["..%2fleebench.db", "leebench.db", "x"])
      expect((await ask("GET", `/copies/${path}`)).status).toBe(404);
    expect((await (await apiHouse()).ask("POST", "/copies")).json.code).toBe("no-copies-here");
  });
});

describe("a table of pots", () => {
  it("is kept whole or not at all, once under one key, and goes out again as CSV", async () => {
    const { ask, app, store, replanned } = await apiHouse();
    const heading =
      "name;groupId;count;canopyWidthCm;plantHeightCm;shape;topCm;baseCm;heightCm;material;mix;spot";
    const row = (name: string, mix = "plain") => `${name};citrus;1;20;30;round;20;15;18;plastic;${mix};steps`;
    const send = (table: string, key: string) =>
      ask("POST", "/sites/yard/pots/table", { body: { table }, headers: { "idempotency-key": key } });
    const bad = await send([heading, row("A"), row("B", "moon"), row("")].join("\n"), "k1");
    expect(bad.json.problems).toEqual([
      { code: "not-chosen", path: ["table", 3, "mixId"], data: { given: "moon" } },
      { code: "missing", path: ["table", 4, "name"] },
    ]);
    expect(await store.pots.list("yard")).toHaveLength(1);
    const good = [heading, row("A"), row("B")].join("\n");
    const first = await send(good, "k2");
    expect(first.json.items.map(({ name }: { name: string }) => name)).toEqual(["A", "B"]);
    expect((await send(good, "k2")).json).toEqual(first.json);
    expect([await store.pots.list("yard"), replanned]).toEqual([
      expect.objectContaining({ length: 3 }),
      ["yard"],
    ]);
    expect(await (await app.request("/api/v1/sites/yard/pots.csv")).text()).toContain("A,");
  });
});

describe("being away", () => {
  it("hands over between days to somebody known, and ends", async () => {
    const { ask } = await apiHouse();
    const ann = (await ask("POST", "/people", { body: { name: "Ann" } })).json.id;
    const add = (body: object) => ask("POST", "/sites/yard/handovers", { body });
    const days = { fromDay: "2031-05-03", toDay: "2031-05-09" };
    expect(codes(await add({ personId: "x", fromDay: "2031-04-09", toDay: "2031-04-08" }))).toEqual([
      "not-chosen",
      "last-day-before-first",
      "day-gone-by",
    ]);
    const { status, json } = await add({ personId: ann, ...days });
    expect([status, json.alone]).toEqual([201, false]);
    expect((await ask("GET", "/sites/yard/handovers")).json.items).toEqual([json]);
    await ask("POST", "/sites/yard/plan");
    // In an invented plan of one day nothing lies within the days away; the sheet says so.
    expect((await ask("GET", "/sites/yard/sheet")).json.days).toEqual([]);
    expect((await ask("DELETE", `/sites/yard/handovers/${json.id}`)).status).toBe(204);
    expect((await ask("DELETE", `/sites/yard/handovers/${json.id}`)).status).toBe(404);
  });
});

describe("last year", () => {
  it("is asked for by place, and told how far it is", async () => {
    const asked: DeskAsk[] = [];
    const desk: ReplayDesk = {
      state: async () => (asked[0] ? { kind: "running", ask: asked[0], doneFrac: 0.25 } : { kind: "none" }),
      start: (ask) => void asked.push(ask),
      close: () => undefined,
    };
    const { ask } = await apiHouse({}, desk);
    expect((await ask("GET", "/sites/yard/last-year")).json).toEqual({ kind: "none" });
    const begun = await ask("POST", "/sites/yard/last-year", { body: { placeId: "own-site" } });
    expect([begun.status, begun.json]).toEqual([
      202,
      { kind: "running", ask: { placeId: "own-site", year: 2030 }, doneFrac: 0.25 },
    ]);
    expect(codes(await ask("POST", "/sites/yard/last-year", { body: { placeId: "moon" } }))).toEqual([
      "not-one-of",
    ]);
  });
});

describe("how pots stand", () => {
  it("follows the journal: a move shows, and a pot that is gone does not", async () => {
    const { ask, store } = await apiHouse();
    const steps = (await ask("GET", "/sites/yard/spots/steps")).json;
    await store.spots.put("yard", { ...steps, id: "porch", name: "Porch" });
    const stands = async () => (await ask("GET", "/sites/yard/stands")).json.items;
    const [before] = await stands();
    expect(before).toMatchObject({ potId: "p1", spotId: "steps", mixId: "plain", waterMl: null });
    const log = (body: object) => ask("POST", "/sites/yard/journal", { body: { potId: "p1", body } });
    expect((await log({ kind: "moved", toSpotId: "porch" })).status).toBe(201);
    expect((await stands())[0]).toMatchObject({ spotId: "porch", plantedAt: before.plantedAt });
    expect((await log({ kind: "gone", how: "given-away" })).status).toBe(201);
    expect(await stands()).toEqual([]);
  });

  it("under a sky that is known hour by hour", async () => {
    const { ask } = await apiHouse();
    await ask("POST", "/sites/yard/plan");
    const { hours } = (await ask("GET", "/sites/yard/sky")).json;
    // The test's feed knows 24 hours ahead.
    expect(hours).toHaveLength(24);
    expect(hours[0]).toMatchObject({
      startUtcMs: Date.parse("2031-05-02T03:00Z"),
      isDay: expect.any(Boolean),
    });
  });
});

describe("plans gone by, places and tests", () => {
  it("are found by day and number", async () => {
    const { ask, clock } = await apiHouse();
    await ask("POST", "/sites/yard/plan");
    clock.nowUtcMs += 86_400_000;
    await ask("POST", "/sites/yard/plan");
    const days = (await ask("GET", "/sites/yard/plans")).json.items.map(
      ({ plan }: { plan: { forDay: string } }) => plan.forDay,
    );
    expect(days).toEqual(["2031-05-03", "2031-05-02"]);
    const { items } = (await ask("GET", "/sites/yard/plans?forDay=2031-05-02")).json;
    expect(items).toHaveLength(1);
    expect((await ask("GET", `/sites/yard/plans/${items[0].id}`)).json).toEqual(items[0]);
    for (const id of ["0", "9999", "x", "1e3"])
      expect((await ask("GET", `/sites/yard/plans/${id}`)).status).toBe(404);
  });

  it("of a feed that does not answer are told with what to do", async () => {
    const nowhere = "http://127.0.0.1:9";
    const { ask } = await apiHouse({
      feed: { ...DEFAULT_FEED_SETTINGS, geocodingUrl: nowhere, elevationUrl: nowhere },
    });
    for (const path of ["/places?name=Quay", "/elevation?latDeg=1&lonDeg=2"]) {
      const { status, json } = await ask("GET", path);
      expect([status, json.code, json.problems.length]).toEqual([503, "feed-not-there", 1]);
    }
    for (const path of [
      "/places",
      "/places?name=Q",
      "/elevation?latDeg=91&lonDeg=2",
      "/elevation?latDeg=1e1&lonDeg=2",
    ])
      expect((await ask("GET", path)).status, path).toBe(422);
  });

  it("by scale and by jug come to the same pores", async () => {
    const { ask } = await apiHouse();
    const read = async (body: object) => (await ask("POST", "/porosity-test", { body })).json;
    const jug = await read({ by: "jug", potMl: 1000, addedMl: 600, drainedMl: 150 });
    // By hand: 0.6 kg soaked in, 0.15 kg drained, at one kilogram a litre.
    const scale = await read({ by: "scale", potMl: 1000, filledKg: 1, soakedKg: 1.6, drainedKg: 1.45 });
    expect(jug).toMatchObject({ totalPorosityFrac: 0.6, airSpaceFrac: 0.15 });
    expect(scale.totalPorosityFrac).toBeCloseTo(0.6, 2);
    expect(scale.airSpaceFrac).toBeCloseTo(0.15, 2);
    expect(
      codes(
        await ask("POST", "/porosity-test", {
          body: { by: "jug", potMl: 100, addedMl: 600, drainedMl: 150 },
        }),
      ),
    ).toEqual(expect.arrayContaining([expect.stringMatching(/./)]));
  });
});
