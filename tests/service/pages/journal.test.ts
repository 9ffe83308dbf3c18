import { describe, expect, it } from "vitest";
import type { EntryBody, JournalEntry } from "../../../core/journal/entry.ts";
import { longAgoUtcMs } from "../../../service/pages/journal/planted-long-ago.ts";
import { collection, plan } from "../brief/plan-builder.ts";
import { houseOf, NOW_UTC_MS } from "./house-of.ts";

const vessel = { shape: "round", topCm: 30, baseCm: 22, heightCm: 28, material: "unglazed" } as const;
const planted: EntryBody = { kind: "planted", vessel, mixId: "Lean", roots: "undisturbed" };

/** A house whose journal holds these, each at its instant. */
const houseWith = (...entries: [body: EntryBody, atUtcMs: number][]) =>
  houseOf({
    collection,
    plan: plan(),
    journal: entries.map(([body, atUtcMs], index): JournalEntry => {
      const id = `entry-${index}`;
      return { id, potId: "lemon", atUtcMs, recordedUtcMs: NOW_UTC_MS, body };
    }),
  });

const PAGES = ["/journal", "/pots/lemon"];

describe("the day of an entry", () => {
  it("has its year where that is not the current one", async () => {
    const fed: EntryBody = { kind: "fed" };
    const { get } = await houseWith(
      [fed, Date.parse("2027-01-05T09:00Z")],
      [fed, Date.parse("1990-01-05T09:00Z")],
    );
    for (const page of PAGES) {
      const { text } = await get(page);
      expect(text).toMatch(/>Tue 5 Jan, \d\d:00</);
      expect(text).toMatch(/>Fri 5 Jan 1990, \d\d:00</);
    }
  });

  it("has it in the day of a gauge emptied in another year than it was read", async () => {
    const sinceUtcMs = Date.parse("2026-12-30T09:00Z");
    const gauge: EntryBody = { kind: "rain-gauge", rainMm: 12, sinceUtcMs };
    const { get } = await houseWith([gauge, Date.parse("2027-01-02T09:00Z")]);
    expect((await get("/journal")).text).toContain("12 mm since Wednesday 30 December 2026");
  });

  it("is not told where a pot was only said to be planted long ago, and is where a day was given", async () => {
    const { get } = await houseWith(
      [planted, longAgoUtcMs(NOW_UTC_MS)],
      [planted, longAgoUtcMs(NOW_UTC_MS) + 1],
    );
    const assumed = '<span class="when">More than a year ago</span> ';
    const given = /<span class="when">Tue 7 Apr 2026, \d\d:00<\/span> /;
    for (const page of PAGES) {
      const { text } = await get(page);
      expect(text).toContain("Taken as planted in Lean");
      expect(text).toContain(assumed);
      expect(text).toMatch(given);
    }
    expect((await get("/journal/entry-0/correct")).text).toContain(
      "As it stands: More than a year ago Lemon: Taken",
    );
  });
});

describe("the search of the journal", () => {
  it("finds every word of a line, in any order, small or not, and however the line is spaced", async () => {
    const at = NOW_UTC_MS - 3_600_000;
    const { get } = await houseWith(
      [{ kind: "watered", given: { kind: "measured", waterMl: 800 } }, at],
      [{ kind: "weighed", massKg: 31 }, at],
    );
    const shown = async (search: string) => {
      const { text } = await get(`/journal?search=${encodeURIComponent(search)}`);
      return ["Watered, 800 ml", "Weighed, 31 kg"].filter((what) => text.includes(`Lemon: ${what}`));
    };
    expect(await shown("watered lemon")).toEqual(["Watered, 800 ml"]);
    expect(await shown("31 kg")).toEqual(["Weighed, 31 kg"]);
    expect(await shown(" LEMON  ")).toHaveLength(2);
    expect(await shown("")).toHaveLength(2);
    expect(await shown("watered fig")).toEqual([]);
  });
});
