import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { EntryBody, JournalEntry } from "../../../core/journal/entry.ts";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { journal, PLANTED, pastWeather, potAfter, START } from "./build-collection.ts";

const HOURS = 15 * 24;
const past = pastWeather(HOURS);
const hour = fc.double({ min: 1, max: HOURS - 1, noNaN: true });

const sound: fc.Arbitrary<EntryBody> = fc.oneof(
  fc.constant<EntryBody>({ kind: "watered", given: { kind: "ran-through" } }),
  fc
    .integer({ min: 50, max: 900 })
    .map((waterMl): EntryBody => ({ kind: "watered", given: { kind: "measured", waterMl } })),
  fc.constantFrom("terrace", "shed").map((toSpotId): EntryBody => ({ kind: "moved", toSpotId })),
  fc.double({ min: 3, max: 5, noNaN: true }).map((massKg): EntryBody => ({ kind: "weighed", massKg })),
);
const soundJournal = fc
  .array(fc.tuple(hour, sound), { maxLength: 6 })
  .map((rows) => journal([[0, PLANTED], ...rows]));

/** Entries that cannot be, each with the note that it must lead to. */
const impossible = fc
  .tuple(
    hour,
    fc.constantFrom<readonly [string, EntryBody]>(
      ["spot-unknown", { kind: "moved", toSpotId: "moon" }],
      ["mix-unknown", { ...PLANTED, mixId: "mud" } as EntryBody],
      ["value-impossible", { kind: "weighed", massKg: -3 }],
      ["value-impossible", { kind: "weighed", massKg: Number.POSITIVE_INFINITY }],
      ["value-impossible", { kind: "watered", given: { kind: "measured", waterMl: Number.NaN } }],
      [
        "drained-more-than-poured",
        { kind: "watered", given: { kind: "poured-drained", pouredMl: 10, drainedMl: 11 } },
      ],
      ["value-impossible", { kind: "checked", dryToCm: -2 }],
      ["entry-unknown", { kind: "undo", ofEntryId: "never written" }],
      ["correction-of-wrong-kind", correctionTo({ kind: "undo", ofEntryId: "e0" })],
      ["future-dated", { kind: "watered", given: { kind: "ran-through" } }],
      ["pot-unknown", { kind: "watered", given: { kind: "ran-through" } }],
    ),
  )
  .map(([at, [code, body]]) => ({ at, code, body }));

function correctionTo(body: EntryBody): EntryBody {
  return { kind: "correction", ofEntryId: "e0", atUtcMs: START, body };
}

function entryOf({ at, code, body }: { at: number; code: string; body: EntryBody }, i: number): JournalEntry {
  const atUtcMs = START + (code === "future-dated" ? HOURS + at : at) * HOUR_MS;
  const potId = code === "pot-unknown" ? "stranger" : "rose";
  return { id: `bad${i}`, atUtcMs, recordedUtcMs: atUtcMs, potId, body };
}

describe("a journal with entries that cannot be", () => {
  it("leaves the pot as it is without them, and tells of each why", () => {
    fc.assert(
      fc.property(
        soundJournal,
        fc.array(impossible, { minLength: 1, maxLength: 5 }),
        fc.infiniteStream(fc.nat()),
        (good, wrong, keys) => {
          const bad = wrong.map(entryOf);
          const twice = good.slice(-1);
          const mixed = [...good, ...bad, ...twice]
            .map((entry) => ({ entry, key: keys.next().value }))
            .sort((a, b) => a.key - b.key)
            .map(({ entry }) => entry);
          const clean = potAfter({ hours: HOURS, entries: good, past });
          const messy = potAfter({ hours: HOURS, entries: mixed, past });
          expect(messy.pots).toEqual(clean.pots);
          const codes = messy.problems.map(({ code }) => code).sort();
          expect(codes).toEqual([...wrong.map(({ code }) => code), "entry-repeated"].sort());
        },
      ),
      { numRuns: 60 },
    );
  });

  it("lets nothing after the pot's end change how it ended", () => {
    fc.assert(
      fc.property(soundJournal, fc.array(fc.tuple(hour, sound), { maxLength: 5 }), (good, later) => {
        const end = HOURS * HOUR_MS + START;
        const gone = { id: "gone", atUtcMs: end - HOUR_MS, recordedUtcMs: end, potId: "rose" };
        const ended = [...good, { ...gone, body: { kind: "gone", how: "given-away" } as const }];
        const after = later.map(([minutes, body], i) => {
          const atUtcMs = end - HOUR_MS + Math.min(60, minutes) * 60_000;
          return { id: `late${i}`, atUtcMs, recordedUtcMs: atUtcMs, potId: "rose", body };
        });
        const as = potAfter({ hours: HOURS, entries: ended, past });
        const told = potAfter({ hours: HOURS, entries: [...ended, ...after], past });
        expect(told.pots).toEqual(as.pots);
        expect(told.pots[0]!.gone).toBe(true);
        expect(told.problems.map(({ code }) => code)).toEqual(after.map(() => "pot-gone"));
      }),
      { numRuns: 40 },
    );
  });
});
