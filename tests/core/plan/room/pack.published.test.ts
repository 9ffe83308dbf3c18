import highs from "highs";
import { beforeAll, describe, expect, it } from "vitest";
import { pack } from "../../../../core/plan/room/pack.ts";
import type { Item } from "../../../../core/plan/room/packing.ts";
import { seededRandom } from "../../../../core/weather/seeded-random.ts";

/**
 * The sharing of room against HiGHS, an exact solver of mixed integer programmes (Huangfu and Hall, 2018, Parallelizing
 * the dual revised simplex method, Mathematical Programming Computation 10:119-142), on made-up benches. What is promised
 * is 1 % of the exact gain; the solver itself is asked to come within 0.01 %.
 */
const CASES = [
  { pots: 12, spots: 1, resources: "area", share: 0.5 },
  { pots: 12, spots: 3, resources: "both", share: 0.4 },
  { pots: 40, spots: 2, resources: "places", share: 0.3 },
  { pots: 25, spots: 3, resources: "area", share: 0.5 },
  { pots: 25, spots: 2, resources: "both", share: 0.2 },
  { pots: 200, spots: 5, resources: "places", share: 0.6 },
  { pots: 500, spots: 1, resources: "area", share: 0.4 },
  { pots: 500, spots: 5, resources: "places", share: 0.5 },
] as const;

/** Benches that take the exact solver minutes: here the bound, which the cases above confirm, is the witness. */
const LARGE = [
  { pots: 60, spots: 3, resources: "area", share: 0.5 },
  { pots: 200, spots: 3, resources: "both", share: 0.6 },
  { pots: 500, spots: 3, resources: "both", share: 0.3 },
  { pots: 500, spots: 5, resources: "area", share: 0.15 },
] as const;

type Bench = (typeof CASES)[number] | (typeof LARGE)[number];

// The package's types describe its default export as the module; at run time it is the function itself.
const loadHighs = highs as unknown as typeof highs.default;
let solver: Awaited<ReturnType<typeof loadHighs>>;
beforeAll(async () => {
  solver = await loadHighs();
});

describe("pack against an exact solver", () => {
  it("checks twelve benches", () => expect([...CASES, ...LARGE]).toHaveLength(12));

  it.each(CASES)("$pots pots, $spots spots, $resources, room for $share", (bench) => {
    const { items, capacities } = benchOf(bench);
    const exact = exactGain(items, capacities);
    const found = pack(items, capacities);
    expect(usedWithin(items, capacities, found.choices)).toBe(true);
    expect(found.gain).toBeLessThanOrEqual(exact * (1 + 2e-4));
    expect(found.gain).toBeGreaterThanOrEqual(exact * 0.99);
    expect(found.bound).toBeGreaterThanOrEqual(exact * (1 - 1e-6));
  });

  it.each(LARGE)(
    "within 1 % of its bound: $pots pots, $spots spots, $resources, room for $share",
    (bench) => {
      const { items, capacities } = benchOf(bench);
      const found = pack(items, capacities);
      expect(usedWithin(items, capacities, found.choices)).toBe(true);
      expect(found.gain).toBeGreaterThanOrEqual(found.bound * 0.99);
    },
  );
});

function benchOf({ pots, spots, resources, share }: Bench) {
  const { uniform: random } = seededRandom(pots * 100 + spots);
  const capacities: number[] = [];
  const indexOf = { places: [] as number[], area: [] as number[] };
  const areas = Array.from({ length: pots }, () => 100 + 1500 * random() ** 2);
  const total = areas.reduce((sum, area) => sum + area, 0);
  for (let spot = 0; spot < spots; spot++) {
    if (resources !== "area") indexOf.places.push(capacities.push(Math.round((pots * share) / spots)) - 1);
    if (resources !== "places") indexOf.area.push(capacities.push((total * share) / spots) - 1);
  }
  const items: Item[] = areas.map((area, i) => {
    const worth = random() ** 3 * (0.3 + area / 1000);
    return {
      id: `pot-${i}`,
      options: Array.from({ length: spots }, (_, spot) => ({
        gain: worth * (0.6 + 0.4 * random()) + 0.001,
        uses: [
          ...(indexOf.places[spot] === undefined ? [] : [{ resource: indexOf.places[spot]!, amount: 1 }]),
          ...(indexOf.area[spot] === undefined ? [] : [{ resource: indexOf.area[spot]!, amount: area }]),
        ],
      })),
    };
  });
  return { items, capacities };
}

function exactGain(items: readonly Item[], capacities: readonly number[]): number {
  const names: string[] = [];
  const objective: string[] = [];
  const rows = capacities.map(() => [] as string[]);
  const once = items.map((item, i) =>
    item.options.map((option, o) => {
      const name = `x${i}_${o}`;
      names.push(name);
      objective.push(`${option.gain.toFixed(12)} ${name}`);
      for (const { resource, amount } of option.uses) rows[resource]!.push(`${amount.toFixed(9)} ${name}`);
      return name;
    }),
  );
  const text = [
    "Maximize",
    ` obj: ${objective.join(" + ")}`,
    "Subject To",
    ...once.map((own, i) => ` one${i}: ${own.join(" + ")} <= 1`),
    ...rows.map((row, r) => ` room${r}: ${row.join(" + ")} <= ${capacities[r]!.toFixed(9)}`),
    "Binary",
    ` ${names.join(" ")}`,
    "End",
  ].join("\n");
  const { ObjectiveValue, Status } = solver.solve(text, { mip_rel_gap: 1e-4 });
  expect(Status).toBe("Optimal");
  return ObjectiveValue;
}

function usedWithin(items: readonly Item[], capacities: readonly number[], choices: Int32Array): boolean {
  const used = capacities.map(() => 0);
  for (const [i, choice] of choices.entries()) {
    for (const { resource, amount } of items[i]!.options[choice]?.uses ?? []) used[resource]! += amount;
  }
  return used.every((amount, r) => amount <= capacities[r]! + 1e-6);
}
