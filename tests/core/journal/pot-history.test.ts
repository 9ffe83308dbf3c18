import { describe, expect, it } from "vitest";
import type { EntryBody, JournalEntry } from "../../../core/journal/entry.ts";
import { potHistory } from "../../../core/journal/pot-history.ts";
import { vessel } from "../pot/build-pot.ts";

const NOW = 1000;
const KNOWN = {
  pots: new Set(["lemon"]),
  spots: new Set(["terrace"]),
  mixes: new Set(["gritty"]),
  nowUtcMs: NOW,
};
const PLANTED: EntryBody = { kind: "planted", vessel: vessel(), mixId: "gritty", roots: "undisturbed" };

function history(...bodies: readonly (readonly [number, EntryBody])[]) {
  const entries: JournalEntry[] = bodies.map(([atUtcMs, body], i) => ({
    id: `e${i}`,
    atUtcMs,
    recordedUtcMs: atUtcMs,
    potId: "lemon",
    body,
  }));
  const { events, gone, notes } = potHistory(entries, KNOWN);
  return { kinds: events.map(({ body }) => body.kind), gone, codes: notes.map(({ code }) => code) };
}

describe("one pot's history", () => {
  it("lets ordinary entries count without a note", () => {
    const read = history([10, PLANTED], [20, { kind: "watered", given: { kind: "ran-through" } }]);
    expect(read).toEqual({ kinds: ["planted", "watered"], gone: false, codes: [] });
  });

  it.each([
    ["in the future", { kind: "fed" } as const, NOW + 1, "future-dated"],
    ["to an unknown spot", { kind: "moved", toSpotId: "moon" } as const, 20, "spot-unknown"],
    ["with an unknown mix", { ...PLANTED, mixId: "mud" } as EntryBody, 20, "mix-unknown"],
    ["of no weight", { kind: "weighed", massKg: 0 } as const, 20, "value-impossible"],
    ["of unknown weight", { kind: "weighed", massKg: Number.NaN } as const, 20, "value-impossible"],
    [
      "of less than no water",
      { kind: "watered", given: { kind: "measured", waterMl: -5 } } as const,
      20,
      "value-impossible",
    ],
    [
      "of endless water",
      { kind: "watered", given: { kind: "measured", waterMl: Number.POSITIVE_INFINITY } } as const,
      20,
      "value-impossible",
    ],
    [
      "that drained more than was poured",
      { kind: "watered", given: { kind: "poured-drained", pouredMl: 100, drainedMl: 101 } } as const,
      20,
      "drained-more-than-poured",
    ],
    ["dry to less than the surface", { kind: "checked", dryToCm: -1 } as const, 20, "value-impossible"],
  ])("refuses an entry %s, with the reason", (_what, body, at, code) => {
    expect(history([10, PLANTED], [at, body])).toEqual({ kinds: ["planted"], gone: false, codes: [code] });
  });

  it("leaves out what is said of water before the pot was planted, and keeps a note with a note", () => {
    const water: EntryBody = { kind: "watered", given: { kind: "ran-through" } };
    const read = history([5, water], [6, { kind: "note", text: "bought" }], [10, PLANTED]);
    expect(read).toEqual({
      kinds: ["note", "planted"],
      gone: false,
      codes: ["before-planting", "before-planting"],
    });
  });

  it("ends with the pot", () => {
    const read = history([10, PLANTED], [20, { kind: "gone", how: "died" }], [30, { kind: "fed" }]);
    expect(read).toEqual({ kinds: ["planted", "gone"], gone: true, codes: ["pot-gone"] });
  });
});
