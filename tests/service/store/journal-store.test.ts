import { describe, expect, it } from "vitest";
import type { JournalEntry } from "../../../core/journal/entry.ts";
import { fill, note, planted } from "./bench.ts";
import { emptyStore } from "./test-store.ts";

describe("the journal", () => {
  it("takes a repeated send as one entry, and the first one stands", async () => {
    const store = await emptyStore();
    await fill(store);
    expect(await store.journal.append("yard", [note("n1", "first"), note("n2")])).toEqual({
      added: 2,
      repeated: 0,
    });
    expect(await store.journal.append("yard", [note("n1", "second"), note("n3")])).toEqual({
      added: 1,
      repeated: 1,
    });
    expect(await store.journal.append("yard", [note("n4"), note("n4")])).toEqual({ added: 1, repeated: 1 });
    const texts = (await store.journal.list("yard")).map(({ id, body }) => [
      id,
      body.kind === "note" && body.text,
    ]);
    expect(texts.slice(1)).toEqual([
      ["n1", "first"],
      ["n2", "looked in"],
      ["n3", "looked in"],
      ["n4", "looked in"],
    ]);
  });

  it("gives every kind of entry back as it was", async () => {
    const store = await emptyStore();
    await fill(store);
    const atUtcMs = Date.parse("2031-05-02T07:30:15.250Z");
    const bodies: JournalEntry["body"][] = [
      { kind: "watered", given: { kind: "poured-drained", pouredMl: 900, drainedMl: 120 } },
      { kind: "moved", toSpotId: "steps" },
      { kind: "checked", dryToCm: 4, feel: "light" },
      { kind: "trouble", sign: "pests", text: "on the new shoots" },
      { kind: "rain-gauge", rainMm: 4.5, sinceUtcMs: atUtcMs - 3_600_000 },
      { kind: "thermometer", minC: -1.5, sinceUtcMs: atUtcMs - 7_200_000 },
      { kind: "correction", ofEntryId: "e-planted", atUtcMs, potId: "p1", body: planted().body },
      { kind: "undo", ofEntryId: "n1" },
    ];
    const entries = bodies.map((body, index) => ({
      id: `k${index}`,
      atUtcMs,
      recordedUtcMs: atUtcMs + 1,
      body,
    }));
    await store.journal.append("yard", entries);
    expect((await store.journal.list("yard")).slice(1)).toEqual(entries);
  });

  it("only grows: nothing in it can be changed or taken away", async () => {
    const store = await emptyStore();
    await fill(store);
    expect(() => store.raw.prepare("UPDATE journal SET at_utc_ms = 0").run()).toThrow(/only grows/);
    expect(() => store.raw.prepare("DELETE FROM journal").run()).toThrow(/only grows/);
    expect(await store.journal.list("yard")).toEqual([planted()]);
  });

  it("takes a send whole or not at all", async () => {
    const store = await emptyStore();
    await fill(store);
    const bad = { ...note("bad"), atUtcMs: Number.NaN };
    await expect(store.journal.append("yard", [note("good"), bad])).rejects.toThrow();
    await expect(store.journal.append("nowhere", [note("good")])).rejects.toThrow(/FOREIGN KEY/);
    expect(await store.journal.list("yard")).toHaveLength(1);
  });

  it("takes a long send", async () => {
    const store = await emptyStore();
    await fill(store);
    const many = Array.from({ length: 2500 }, (_, index) => note(`n${index}`));
    expect(await store.journal.append("yard", many)).toEqual({ added: 2500, repeated: 0 });
    expect((await store.journal.list("yard")).map(({ id }) => id).slice(1)).toEqual(many.map(({ id }) => id));
  });

  it("takes an empty send", async () => {
    const store = await emptyStore();
    await fill(store);
    expect(await store.journal.append("yard", [])).toEqual({ added: 0, repeated: 0 });
  });
});
