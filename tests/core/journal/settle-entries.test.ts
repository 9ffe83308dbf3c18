import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { EntryBody, JournalEntry } from "../../../core/journal/entry.ts";
import { settleEntries } from "../../../core/journal/settle-entries.ts";

function entry(id: string, at: number, body: EntryBody, changes: Partial<JournalEntry> = {}): JournalEntry {
  return { id, atUtcMs: at, recordedUtcMs: at, potId: "lemon", body, ...changes };
}
const note = (text: string): EntryBody => ({ kind: "note", text });
const texts = (entries: readonly JournalEntry[]) =>
  entries.map(({ body }) => (body.kind === "note" ? body.text : body.kind));
const codes = (notes: readonly { code: string }[]) => notes.map(({ code }) => code);

describe("settling a journal", () => {
  it("puts things in the order in which they happened, whenever they were written down", () => {
    const late = entry("b", 10, note("first"), { recordedUtcMs: 900 });
    const { entries, notes } = settleEntries([entry("a", 20, note("second")), late]);
    expect(texts(entries)).toEqual(["first", "second"]);
    expect(notes).toEqual([]);
  });

  it("applies a correction and leaves the original entry as it was", () => {
    const original = entry("a", 20, note("wrong"));
    const correction = entry("c", 30, {
      kind: "correction",
      ofEntryId: "a",
      atUtcMs: 5,
      body: note("right"),
    });
    const { entries } = settleEntries([original, correction]);
    expect(entries).toEqual([{ ...original, atUtcMs: 5, body: note("right") }]);
    expect(original.body).toEqual(note("wrong"));
  });

  it("lets the newest correction hold, and a correction of a correction count for the entry", () => {
    const journal = [
      entry("a", 10, note("one")),
      entry("b", 20, { kind: "correction", ofEntryId: "a", atUtcMs: 10, body: note("two") }),
      entry("c", 30, { kind: "correction", ofEntryId: "b", atUtcMs: 10, body: note("three") }),
    ];
    expect(texts(settleEntries(journal).entries)).toEqual(["three"]);
  });

  it("takes back an entry, and with a second undo takes back the taking back", () => {
    const journal = [entry("a", 10, note("one")), entry("u", 20, { kind: "undo", ofEntryId: "a" })];
    expect(settleEntries(journal).entries).toEqual([]);
    const again = [...journal, entry("v", 30, { kind: "undo", ofEntryId: "u" })];
    expect(texts(settleEntries(again).entries)).toEqual(["one"]);
  });

  it("takes back a correction alone", () => {
    const journal = [
      entry("a", 10, note("one")),
      entry("c", 20, { kind: "correction", ofEntryId: "a", atUtcMs: 10, body: note("two") }),
      entry("u", 30, { kind: "undo", ofEntryId: "c" }),
    ];
    expect(texts(settleEntries(journal).entries)).toEqual(["one"]);
  });

  it("takes a repeated send once and says so", () => {
    const journal = [entry("a", 10, note("one")), entry("a", 10, note("one"))];
    const { entries, notes } = settleEntries(journal);
    expect(texts(entries)).toEqual(["one"]);
    expect(codes(notes)).toEqual(["entry-repeated"]);
  });

  it("keeps the first of two entries under one id and says so", () => {
    const journal = [entry("a", 30, note("later")), entry("a", 10, note("earlier"))];
    const { entries, notes } = settleEntries(journal);
    expect(texts(entries)).toEqual(["earlier"]);
    expect(codes(notes)).toEqual(["entry-id-used-twice"]);
  });

  it.each([
    ["about one that is not there", { kind: "undo", ofEntryId: "nothing" } as const, "entry-unknown"],
    ["about itself", { kind: "undo", ofEntryId: "x" } as const, "entry-about-itself"],
    [
      "that would turn an entry into an undo",
      {
        kind: "correction",
        ofEntryId: "a",
        atUtcMs: 10,
        body: { kind: "undo", ofEntryId: "a" },
      } as const,
      "correction-of-wrong-kind",
    ],
  ])("refuses an entry %s", (_what, body, code) => {
    const { entries, notes } = settleEntries([entry("a", 10, note("one")), entry("x", 20, body)]);
    expect(texts(entries)).toEqual(["one"]);
    expect(codes(notes)).toEqual([code]);
  });

  it("does not mind two entries that are about each other", () => {
    const journal = [
      entry("x", 10, { kind: "undo", ofEntryId: "y" }),
      entry("y", 20, { kind: "undo", ofEntryId: "x" }),
    ];
    expect(codes(settleEntries(journal).notes)).toEqual(["entry-about-itself", "entry-about-itself"]);
  });

  it("comes to the same whatever order the entries are sent in", () => {
    const ids = ["a", "b", "c", "d", "e"];
    const body: fc.Arbitrary<EntryBody> = fc.oneof(
      fc.string().map(note),
      fc.constantFrom(...ids).map((ofEntryId) => ({ kind: "undo", ofEntryId }) as const),
      fc
        .tuple(fc.constantFrom(...ids), fc.nat(99), fc.string())
        .map(
          ([ofEntryId, atUtcMs, text]) =>
            ({ kind: "correction", ofEntryId, atUtcMs, body: note(text) }) as const,
        ),
    );
    const journal = fc
      .array(fc.tuple(fc.nat(99), body), { minLength: 5, maxLength: 5 })
      .map((rows) => rows.map(([at, b], i) => entry(ids[i]!, at, b)));
    fc.assert(
      fc.property(journal, fc.infiniteStream(fc.nat()), (entries, keys) => {
        const shuffled = entries
          .map((one) => ({ one, key: keys.next().value }))
          .sort((a, b) => a.key - b.key)
          .map(({ one }) => one);
        expect(settleEntries(shuffled)).toEqual(settleEntries(entries));
      }),
    );
  });
});
