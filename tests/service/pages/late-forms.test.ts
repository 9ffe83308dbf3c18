import { describe, expect, it } from "vitest";
import { collection, plan } from "../brief/plan-builder.ts";
import { houseOf, NOW_UTC_MS } from "./house-of.ts";

const stock = { collection, plan: plan() };
const HOUR_MS = 3_600_000;

describe("a form that waited on the device", () => {
  it("is kept with the hour at which it was filled in", async () => {
    const { store, send } = await houseOf(stock);
    const at = NOW_UTC_MS - 5 * HOUR_MS;
    await send("/pots/lemon/log", { formId: "form-0001", kind: "fed", happenedAtUtcMs: String(at) });
    const deed = new URLSearchParams({
      entryId: "tick.water.0001",
      potId: "lemon",
      action: "water",
    }).toString();
    await send("/done", { deed, happenedAtUtcMs: String(at) });
    const entries = await store.journal.list("quay");
    expect(entries.map(({ atUtcMs, recordedUtcMs }) => [atUtcMs, recordedUtcMs])).toEqual([
      [at, NOW_UTC_MS],
      [at, NOW_UTC_MS],
    ]);
  });

  it.each([String(NOW_UTC_MS + HOUR_MS), "12", "soon", "1e12"])(
    "is not believed about %s",
    async (happenedAtUtcMs) => {
      const { store, send } = await houseOf(stock);
      await send("/pots/lemon/log", { formId: "form-0001", kind: "fed", happenedAtUtcMs });
      expect((await store.journal.list("quay"))[0]?.atUtcMs).toBe(NOW_UTC_MS);
    },
  );

  it("sent twice is one entry, filled in anew is another", async () => {
    const { store, send } = await houseOf(stock);
    const form = { formId: "form-0001", kind: "weighed", massKg: "9" };
    await send("/pots/lemon/log", { ...form, happenedAtUtcMs: String(NOW_UTC_MS - HOUR_MS) });
    await send("/pots/lemon/log", { ...form, happenedAtUtcMs: String(NOW_UTC_MS - 2 * HOUR_MS) });
    await send("/pots/lemon/log", { ...form, massKg: "8" });
    expect(await store.journal.list("quay")).toHaveLength(2);
  });

  it("that cannot be understood becomes a note of its pot", async () => {
    const { store, send } = await houseOf(stock);
    const text = new URLSearchParams({ formId: "form-0001", kind: "weighed", massKg: "nine" }).toString();
    await send("/journal/late", { formId: "late-0001", address: "/pots/lemon/log", text });
    expect((await store.journal.list("quay"))[0]).toMatchObject({
      potId: "lemon",
      body: { kind: "note", text: "Entered without signal and not understood: kind weighed, massKg nine" },
    });
  });
});
