import { describe, expect, it } from "vitest";
import { note } from "../store/bench.ts";
import { apiHouse } from "./ask-api.ts";

const WATERED = { potId: "p1", body: { kind: "watered", given: { kind: "ran-through" } } };

describe("reading", () => {
  it("comes in parts, each naming the next, all of it once", async () => {
    const { ask, store } = await apiHouse();
    await store.journal.append(
      "yard",
      Array.from({ length: 24 }, (_, i) => note(`n${i}`)),
    );
    const seen: string[] = [];
    let after = "";
    for (let turn = 0; turn < 9 && after !== "end"; turn++) {
      const { json, answer } = await ask("GET", `/sites/yard/journal?limit=10${after && `&after=${after}`}`);
      seen.push(...json.items.map(({ id }: { id: string }) => id));
      after = json.next ?? "end";
      // RFC 8288: the way on is a link of the relation "next".
      expect(answer.headers.get("link") ?? "end").toMatch(
        json.next ? /^<\?limit=10&after=.+>; rel="next"$/ : /^end$/,
      );
    }
    expect(seen).toEqual(["e-planted", ...Array.from({ length: 24 }, (_, i) => `n${i}`)]);
  });

  it("is not sent again where the ETag is known", async () => {
    const { ask } = await apiHouse();
    const first = await ask("GET", "/sites/yard/pots/p1");
    expect(first.etag).toMatch(/^"[\w-]{22}"$/);
    const again = await ask("GET", "/sites/yard/pots/p1", { headers: { "if-none-match": first.etag } });
    expect(again.status).toBe(304);
  });

  it("of what is not there says so", async () => {
    const { ask } = await apiHouse();
    for (const path of [
      "/sites/x",
      "/sites/x/pots",
      "/sites/yard/pots/x",
      "/sites/yard/plan",
      "/sites/yard/pots/x/what-if",
    ]) {
      const { status, json, answer } = await ask("GET", path);
      expect([status, json.code], path).toEqual([404, "not-there"]);
      expect(answer.headers.get("content-type")).toBe("application/problem+json");
    }
    expect((await ask("GET", "/nowhere")).status).toBe(404);
  });
});

describe("an edit", () => {
  it("names what it changes by its ETag; unseen or late ones are refused and keep nothing", async () => {
    const { ask, replanned } = await apiHouse();
    const { json: pot, etag } = await ask("GET", "/sites/yard/pots/p1");
    const put = (name: string, headers: Record<string, string>) =>
      ask("PUT", "/sites/yard/pots/p1", { body: { ...pot, name }, headers });
    // RFC 6585, 3 and RFC 9110, 13.1.1.
    expect((await put("Unseen", {})).status).toBe(428);
    expect((await put("First", { "if-match": etag })).status).toBe(200);
    expect((await put("Late", { "if-match": etag })).status).toBe(412);
    expect((await ask("GET", "/sites/yard/pots/p1")).json.name).toBe("First");
    expect(replanned).toEqual(["yard"]);
  });

  it("brings in something new, and tells every fault of it at once", async () => {
    const { ask } = await apiHouse();
    const { json: pot } = await ask("GET", "/sites/yard/pots/p1");
    const bad = await ask("PUT", "/sites/yard/pots/p2", {
      body: { ...pot, id: "p2", canopyWidthCm: -1, colour: "red" },
    });
    expect([bad.status, bad.json.code, bad.json.title]).toEqual([422, "not-fit", "Unprocessable Entity"]);
    expect(
      bad.json.problems.map(({ code, path }: { code: string; path: string[] }) => [code, ...path]),
    ).toEqual([
      ["too-small", "canopyWidthCm"],
      ["unknown-key", "colour"],
    ]);
    const astray = await ask("PUT", "/sites/yard/pots/p2", {
      body: { ...pot, id: "p2", firstSpotId: "moon", groupId: "x" },
    });
    expect(astray.json.problems.map(({ code }: { code: string }) => code)).toEqual([
      "unknown-group",
      "unknown-spot",
    ]);
    expect(
      (await ask("PUT", "/sites/yard/pots/p2", { body: { ...pot, id: "p3" } })).json.problems[0].code,
    ).toBe("other-id");
    expect((await ask("PUT", "/sites/yard/pots/p2", { body: { ...pot, id: "p2" } })).status).toBe(201);
    expect((await ask("GET", "/sites/yard/pots")).json.items).toHaveLength(2);
  });
});

describe("the journal", () => {
  it("takes an entry once under one key, however often it is sent", async () => {
    const { ask, store, replanned } = await apiHouse();
    const send = (body: unknown, key = "key-1") =>
      ask("POST", "/sites/yard/journal", { body, headers: { "idempotency-key": key } });
    const first = await send(WATERED);
    expect([first.status, first.json.isNew]).toEqual([201, true]);
    const again = await send(WATERED);
    expect([again.status, again.json]).toEqual([201, first.json]);
    expect((await send({ ...WATERED, body: { kind: "fed" } })).json.code).toBe("key-used-otherwise");
    expect((await send(WATERED, "key-2")).status).toBe(201);
    expect(await store.journal.list("yard")).toHaveLength(3);
    expect(replanned).toHaveLength(2);
    // The answer got lost with the process, the entry was kept: the key still makes it one.
    store.raw.exec("DELETE FROM kept_answer");
    expect((await send(WATERED)).json.isNew).toBe(false);
    expect(await store.journal.list("yard")).toHaveLength(3);
  });

  it("takes corrections and undos of what is there, and nothing that leads nowhere", async () => {
    const { ask, store } = await apiHouse();
    const { json } = await ask("POST", "/sites/yard/journal", { body: WATERED });
    const path = `/sites/yard/journal/${json.entry.id}`;
    const corrected = await ask("POST", `${path}/correction`, { body: { body: { kind: "fed" } } });
    expect(corrected.json.entry.body).toMatchObject({
      kind: "correction",
      potId: "p1",
      body: { kind: "fed" },
    });
    expect((await ask("POST", `${path}/undo`)).status).toBe(201);
    expect((await ask("POST", "/sites/yard/journal/none/undo")).status).toBe(404);
    const before = (await store.journal.list("yard")).length;
    const moved = { kind: "moved", toSpotId: "moon" };
    for (const [body, code] of [
      [{ potId: "p9", body: { kind: "fed" } }, "unknown-pot"],
      [{ potId: "p1", body: moved }, "unknown-spot"],
      [{ at: "2099-01-01T00:00Z", body: { kind: "note", text: "x" } }, "day-to-come"],
      [{ body: { kind: "wattered" } }, "not-one-of"],
    ] as const)
      expect((await ask("POST", "/sites/yard/journal", { body })).json.problems[0].code).toBe(code);
    expect(await store.journal.list("yard")).toHaveLength(before);
  });
});

describe("a body", () => {
  it.each([
    ["{", "application/json", 400],
    ["", "application/json", 400],
    ["{}", "text/plain", 415],
    ["a=b", "application/x-www-form-urlencoded", 415],
    ["[".repeat(100_000), "application/json", 400],
    [
      `{"body":${'{"kind":"correction","ofEntryId":"x","at":"2031-01-01T00:00Z","body":'.repeat(5000)}`,
      "application/json",
      400,
    ],
    [`{"body":{"kind":"note","text":"${"x".repeat(1_100_000)}"}}`, "application/json", 413],
  ])("%.20s as %s is refused with %d", async (body, type, status) => {
    const { ask, store } = await apiHouse();
    const { json, ...answer } = await ask("POST", "/sites/yard/journal", {
      body,
      headers: { "content-type": type },
    });
    expect(answer.status).toBe(status);
    expect(json.detail).toMatch(/\.$/);
    expect(await store.journal.list("yard")).toHaveLength(1);
  });
});
