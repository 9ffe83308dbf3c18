import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { EntryBody } from "../../../../core/journal/entry.ts";
import { componentsById } from "../../../../core/mix/library.ts";
import { DEFAULT_SETTINGS } from "../../../../core/plan/settings.ts";
import { replay } from "../../../../core/pot/replay/replay.ts";
import { HOUR_MS } from "../../../../core/weather/weather.ts";
import { aPot, journal, PLANTED, pastWeather, START } from "../build-collection.ts";
import { GRITTY, groupValues, PEATY, vessel } from "../build-pot.ts";

const HOURS = 30 * 24;

const body: fc.Arbitrary<EntryBody> = fc.oneof(
  fc.constant<EntryBody>({ kind: "watered", given: { kind: "ran-through" } }),
  fc
    .integer({ min: 20, max: 2000 })
    .map((waterMl): EntryBody => ({ kind: "watered", given: { kind: "measured", waterMl } })),
  fc.tuple(fc.integer({ min: 100, max: 2000 }), fc.double({ min: 0, max: 1, noNaN: true })).map(
    ([pouredMl, share]): EntryBody => ({
      kind: "watered",
      given: { kind: "poured-drained", pouredMl, drainedMl: pouredMl * share },
    }),
  ),
  fc.constantFrom("terrace", "shed").map((toSpotId): EntryBody => ({ kind: "moved", toSpotId })),
  fc.double({ min: 2, max: 7, noNaN: true }).map((massKg): EntryBody => ({ kind: "weighed", massKg })),
  fc.constantFrom("light", "middling", "heavy").map((feel): EntryBody => ({ kind: "checked", feel })),
  fc.constantFrom("in-leaf", "leafless", "new-growth").map((state): EntryBody => ({ kind: "leaf", state })),
  fc.constant<EntryBody>({ kind: "pruned" }),
  fc.constant<EntryBody>({
    kind: "planted",
    vessel: vessel({ material: "unglazed", saucerCm: 1.5 }),
    mixId: "peaty",
    roots: "pruned",
  }),
);
/** Hours after which the planting was written down: at once, or long after, at any minute. */
const writtenAfterHours = fc.oneof(fc.constant(0), fc.double({ min: 14 * 24, max: HOURS, noNaN: true }));
const anyJournal = fc
  .tuple(
    writtenAfterHours,
    fc.array(fc.tuple(fc.double({ min: 1, max: HOURS, noNaN: true }), body), { maxLength: 12 }),
  )
  .map(([after, rows]) =>
    journal([[0, PLANTED, { recordedUtcMs: START + after * HOUR_MS }], ...rows.sort((a, b) => a[0] - b[0])]),
  );
const rain = fc.array(fc.constantFrom(0, 0, 0, 0, 0, 0, 0, 0, 1, 12), { minLength: HOURS, maxLength: HOURS });

function contextFor(rainMm: readonly number[]) {
  return {
    pot: aPot(),
    values: groupValues("desert-rose"),
    latDeg: 43,
    settings: { ...DEFAULT_SETTINGS, cloudSize: 9 },
    mixes: new Map([GRITTY, PEATY].map((mix) => [mix.id, mix])),
    components: componentsById(),
    past: pastWeather(HOURS, (hour) => rainMm[hour]!),
  };
}

describe("replaying a journal", () => {
  it("ends in the same bytes when it is cut at any hour and taken up again", () => {
    fc.assert(
      fc.property(anyJournal, rain, fc.integer({ min: 0, max: HOURS }), (entries, rainMm, cut) => {
        const context = contextFor(rainMm);
        const untilUtcMs = START + HOURS * HOUR_MS;
        const cutUtcMs = START + cut * HOUR_MS;
        const whole = replay({ events: entries, untilUtcMs }, context);
        const first = replay(
          { events: entries.filter((e) => e.atUtcMs < cutUtcMs), untilUtcMs: cutUtcMs },
          context,
        );
        const kept = structuredClone(first);
        const rest = entries.filter((e) => e.atUtcMs >= cutUtcMs);
        const second = replay({ events: rest, untilUtcMs, from: first }, context);
        expect(second).toEqual(whole);
        expect(first).toEqual(kept);
      }),
      { numRuns: 60 },
    );
  });

  it("keeps every particle within its bounds and its weights a whole", () => {
    fc.assert(
      fc.property(anyJournal, rain, (entries, rainMm) => {
        const { particles, planting } = replay(
          { events: entries, untilUtcMs: START + HOURS * HOUR_MS },
          contextFor(rainMm),
        );
        const { capacityMl } = planting!.inVessel.hold;
        const p = particles!;
        expect(p.weightFrac.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
        for (let k = 0; k < p.size; k++) {
          const missing = p.surfaceMl[k]! + p.bodyMl[k]!;
          expect(missing).toBeGreaterThan(-1e-6);
          expect(missing).toBeLessThan(capacityMl * p.capacityFactor[k]! + 1e-6);
          expect(p.thirstFactor[k]!).toBeGreaterThan(0);
          expect(Number.isFinite(p.tareKg[k]!)).toBe(true);
        }
      }),
      { numRuns: 60 },
    );
  });
});
