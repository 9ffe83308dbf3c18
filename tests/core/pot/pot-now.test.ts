import { describe, expect, it } from "vitest";
import type { EntryBody } from "../../../core/journal/entry.ts";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { aPot, journal, meanFrac, PLANTED, pastWeather, potAfter, START } from "./build-collection.ts";
import { vessel } from "./build-pot.ts";

const RAN_THROUGH: EntryBody = { kind: "watered", given: { kind: "ran-through" } };
const DAY = 24;
const codes = (problems: readonly { code: string }[]) => problems.map(({ code }) => code);

describe("pots now", () => {
  it("is full when it was watered in this hour and drier each day after", () => {
    const entries = journal([[0, PLANTED]]);
    const course = [0, 1, 2, 4, 8].map((days) => meanFrac({ hours: days * DAY, entries }));
    expect(course[0]).toBeCloseTo(1, 9);
    expect([...course].sort((a, b) => b - a)).toEqual(course);
  });

  it("is full again when it was watered until it ran through", () => {
    const entries = journal([
      [0, PLANTED],
      [5 * DAY, RAN_THROUGH],
    ]);
    expect(meanFrac({ hours: 5 * DAY, entries })).toBeCloseTo(1, 9);
  });

  it("remembers how long it has been dry, until it is watered", () => {
    const drought = (hours: number, entries: ReturnType<typeof journal>) =>
      Math.max(...potAfter({ hours, entries }).pots[0]!.cloud.droughtFrac!);
    const dry = journal([[0, PLANTED]]);
    expect(drought(1 * DAY, dry)).toBe(0);
    expect(drought(40 * DAY, dry)).toBeGreaterThan(drought(30 * DAY, dry));
    const watered = journal([
      [0, PLANTED],
      [40 * DAY, RAN_THROUGH],
    ]);
    expect(drought(41 * DAY, watered)).toBe(0);
  });

  it("takes a measured can as far as there is room", () => {
    const dry = journal([[0, PLANTED]]);
    const half = journal([
      [0, PLANTED],
      [8 * DAY, { kind: "watered", given: { kind: "measured", waterMl: 300 } }],
    ]);
    const before = meanFrac({ hours: 8 * DAY, entries: dry });
    const after = meanFrac({ hours: 8 * DAY, entries: half });
    expect(after).toBeGreaterThan(before + 0.1);
    expect(after).toBeLessThan(1);
  });

  it("follows the pot to another spot", () => {
    const moved = journal([
      [0, PLANTED],
      [2 * DAY, { kind: "moved", toSpotId: "shed" }],
    ]);
    const stayed = journal([[0, PLANTED]]);
    const [now] = potAfter({ hours: 6 * DAY, entries: moved }).pots;
    expect(now!.spotId).toBe("shed");
    expect(meanFrac({ hours: 6 * DAY, entries: moved })).toBeGreaterThan(
      meanFrac({ hours: 6 * DAY, entries: stayed }) + 0.1,
    );
  });

  it("counts rain that fell on it", () => {
    const entries = journal([[0, PLANTED]]);
    const rainMm = (hour: number) => (hour === 6 * DAY ? 8 : 0);
    expect(meanFrac({ hours: 7 * DAY, entries, rainMm })).toBeGreaterThan(
      meanFrac({ hours: 7 * DAY, entries }),
    );
  });

  it("takes a backdated watering as if it had been told in time", () => {
    const late = journal([
      [0, PLANTED],
      [6 * DAY, RAN_THROUGH, { recordedUtcMs: START + 9 * DAY * 3.6e6 }],
    ]);
    const intime = journal([
      [0, PLANTED],
      [6 * DAY, RAN_THROUGH],
    ]);
    expect(potAfter({ hours: 9 * DAY, entries: late }).pots[0]!.cloud).toEqual(
      potAfter({ hours: 9 * DAY, entries: intime }).pots[0]!.cloud,
    );
  });

  it("takes back a watering that is undone", () => {
    const undone = journal([
      [0, PLANTED],
      [6 * DAY, RAN_THROUGH],
      [7 * DAY, { kind: "undo", ofEntryId: "e1" }],
    ]);
    const never = journal([[0, PLANTED]]);
    expect(potAfter({ hours: 9 * DAY, entries: undone }).pots[0]!.cloud).toEqual(
      potAfter({ hours: 9 * DAY, entries: never }).pots[0]!.cloud,
    );
  });

  it("leaves out a pot that was never planted, and says so", () => {
    const { pots, problems } = potAfter({ hours: DAY, entries: [] });
    expect(pots).toEqual([]);
    expect(problems).toContainEqual({
      code: "pot-not-planted",
      path: ["collection", "pots", 0],
      data: { potId: "rose" },
    });
  });

  it("does not swallow entries about pots or groups that are not there", () => {
    const entries = journal([
      [0, PLANTED],
      [1, RAN_THROUGH, { potId: "stranger" }],
    ]);
    expect(codes(potAfter({ hours: DAY, entries }).problems)).toEqual(["pot-unknown"]);
    const odd = potAfter({ hours: DAY, entries, pots: [aPot({ groupId: "triffid" })] });
    expect(codes(odd.problems)).toEqual(["pot-unknown", "group-unknown"]);
  });

  it("leaves the state as it was when an entry lies in the future", () => {
    const future = potAfter({
      hours: 3 * DAY,
      entries: journal([
        [0, PLANTED],
        [4 * DAY, RAN_THROUGH],
      ]),
    });
    const without = potAfter({ hours: 3 * DAY, entries: journal([[0, PLANTED]]) });
    expect(codes(future.problems)).toEqual(["future-dated"]);
    expect(future.pots[0]!.cloud).toEqual(without.pots[0]!.cloud);
  });

  it("ends with the pot, whatever is told after", () => {
    const gone = journal([
      [0, PLANTED],
      [DAY, { kind: "gone", how: "died" }],
      [2 * DAY, RAN_THROUGH],
    ]);
    const { pots, problems } = potAfter({ hours: 3 * DAY, entries: gone });
    expect(pots[0]!.gone).toBe(true);
    expect(pots[0]!.lastWateredUtcMs).toBe(START);
    expect(codes(problems)).toEqual(["pot-gone"]);
  });

  it("knows nothing of the content after days without weather, and says so by its spread", () => {
    const entries = journal([[0, PLANTED]]);
    const blind = potAfter({ hours: 30 * DAY, entries, past: new Map() }).pots[0]!;
    const fracs = blind.cloud.waterMl.map(
      (ml, k) => ml / (blind.cloud.capacityFactor[k]! * blind.inVessel.hold.capacityMl),
    );
    expect(Math.max(...fracs)).toBeGreaterThan(0.95);
    expect(Math.min(...fracs)).toBeLessThan(0.5);
  });

  it("keeps what was learned of the plant through repotting and draws the rest anew", () => {
    const bigger = vessel({ topCm: 26, baseCm: 20, heightCm: 24 });
    const repotted: EntryBody = { ...PLANTED, vessel: bigger, mixId: "peaty" } as EntryBody;
    const entries = journal([
      [0, PLANTED],
      [5 * DAY, repotted],
    ]);
    const before = potAfter({ hours: 5 * DAY - 1, entries: entries.slice(0, 1) }).pots[0]!;
    const after = potAfter({ hours: 5 * DAY, entries }).pots[0]!;
    expect(after.vessel).toEqual(bigger);
    expect(after.plantedUtcMs).toBe(START + 5 * DAY * 3.6e6);
    for (const [k, factor] of after.cloud.thirstFactor.entries()) {
      expect(factor / before.cloud.thirstFactor[k]!).toBeCloseTo(1, 2);
    }
    expect(after.cloud.capacityFactor).not.toEqual(before.cloud.capacityFactor);
  });

  it("begins the dry wait anew when rain soaks fresh cuts", () => {
    const cut: EntryBody = { ...PLANTED, roots: "pruned", mixWet: "dry" } as EntryBody;
    const entries = journal([[0, cut]]);
    const dry = potAfter({ hours: 4 * DAY, entries }).pots[0]!;
    const rained = potAfter({ hours: 4 * DAY, entries, rainMm: (hour) => (hour === 3 * DAY ? 20 : 0) })
      .pots[0]!;
    expect(dry.aftercare!.stage).toBe("dry");
    expect(rained.aftercare!.soakedUtcMs).toBe(START + (3 * DAY + 1) * 3.6e6);
    expect(rained.aftercare!.dryUntilUtcMs).toBeGreaterThan(dry.aftercare!.dryUntilUtcMs);
  });

  it("is past its dry wait after two warm days when the ball was left whole", () => {
    const shifted: EntryBody = { ...PLANTED, mixWet: "moist" } as EntryBody;
    const at = (days: number) =>
      potAfter({ hours: days * DAY, entries: journal([[0, shifted]]) }).pots[0]!.aftercare!;
    expect(at(0.5).stage).toBe("dry");
    expect(at(2).stage).toBe("first-drink");
    const entries = journal([
      [0, shifted],
      [2 * DAY, RAN_THROUGH],
    ]);
    expect(potAfter({ hours: 3 * DAY, entries }).pots[0]!.aftercare!.stage).toBe("easing");
  });

  describe("of a pot that was planted long before it was written down", () => {
    const WRITTEN = 60 * DAY;
    const late = { recordedUtcMs: START + WRITTEN * HOUR_MS };
    const usableLeft = (hours: number, entries: ReturnType<typeof journal>) => {
      const { cloud, inVessel } = potAfter({ hours, entries }).pots[0]!;
      const { unusableMl, usableMl } = inVessel.hold;
      return [...cloud.waterMl.map((ml, k) => (ml / cloud.capacityFactor[k]! - unusableMl) / usableMl)].sort(
        (a, b) => a - b,
      );
    };

    it("knows only that somebody kept it alive, as its waterings were not told", () => {
      const left = usableLeft(WRITTEN, journal([[0, PLANTED, late]]));
      expect(left[0]!).toBeGreaterThan(0);
      expect(left[0]!).toBeLessThan(0.3);
      expect(left.at(-1)!).toBeGreaterThan(0.9);
      expect(Math.max(...usableLeft(WRITTEN, journal([[0, PLANTED]])))).toBeLessThan(0.1);
    });

    it("counts no drought against it, and lets it dry from then on", () => {
      const entries = journal([[0, PLANTED, late]]);
      const drought = potAfter({ hours: WRITTEN, entries }).pots[0]!.cloud.droughtFrac!;
      expect(Math.max(...drought)).toBe(0);
      const middle = (left: readonly number[]) => left[Math.floor(left.length / 2)]!;
      expect(middle(usableLeft(WRITTEN + 10 * DAY, entries))).toBeLessThan(
        middle(usableLeft(WRITTEN, entries)),
      );
    });

    it("takes it as it was found from the first word about its water", () => {
      const told = journal([
        [0, PLANTED, late],
        [57 * DAY, RAN_THROUGH, late],
      ]);
      const asItHappened = journal([
        [0, PLANTED],
        [57 * DAY, RAN_THROUGH],
      ]);
      const mean = (left: readonly number[]) => left.reduce((sum, one) => sum + one, 0) / left.length;
      expect(mean(usableLeft(57 * DAY, told))).toBeCloseTo(1, 9);
      expect(mean(usableLeft(WRITTEN, told))).toBeCloseTo(mean(usableLeft(WRITTEN, asItHappened)), 2);
    });

    it("believes one planted a few days ago to be as it was planted", () => {
      const soon = { recordedUtcMs: START + 3 * DAY * HOUR_MS };
      expect(meanFrac({ hours: 3 * DAY, entries: journal([[0, PLANTED, soon]]) })).toBe(
        meanFrac({ hours: 3 * DAY, entries: journal([[0, PLANTED]]) }),
      );
    });
  });

  it("asks what happened when a weighing cannot be", () => {
    const entries = journal([
      [0, PLANTED],
      [2 * DAY, { kind: "weighed", massKg: 25 }],
    ]);
    const plain = journal([[0, PLANTED]]);
    const now = potAfter({ hours: 2 * DAY, entries }).pots[0]!;
    expect(now.doubts).toHaveLength(1);
    expect(now.doubts[0]).toMatchObject({
      code: "does-not-fit",
      path: ["journal", "e1"],
      data: { kind: "weighed", seen: 25, question: "mix-changed" },
    });
    const untouched = potAfter({ hours: 2 * DAY, entries: plain }).pots[0]!;
    const mean = (column: Float64Array) => column.reduce((sum, ml) => sum + ml, 0) / column.length;
    expect(mean(now.cloud.waterMl) / mean(untouched.cloud.waterMl)).toBeCloseTo(1, 1);
  });

  it("does not depend on the order in which pots are listed", () => {
    const pots = ["rose", "lemon", "aloe"].map((id) => aPot({ id }));
    const entries = pots.flatMap(({ id }, i) => journal([[i, PLANTED, { potId: id, id: `p-${id}` }]]));
    const past = pastWeather(5 * DAY);
    const there = potAfter({ hours: 5 * DAY, entries, pots, past }).pots;
    const back = potAfter({ hours: 5 * DAY, entries, pots: [...pots].reverse(), past }).pots;
    expect([...back].reverse()).toEqual(there);
  });
});
