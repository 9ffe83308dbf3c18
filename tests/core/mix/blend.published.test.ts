import { describe, expect, test } from "vitest";
import { blendOf } from "../../../core/mix/blend.ts";
import type { Component } from "../../../core/mix/component.ts";
import { componentsById } from "../../../core/mix/library.ts";
import { mixInVessel } from "../../../core/mix/mix-in-vessel.ts";
import { shrinkFrac } from "../../../core/mix/packing.ts";
import { suctionCmAt, waterFracAt } from "../../../core/mix/retention.ts";
import type { WorkedMix } from "../../../core/mix/worked-mix.ts";
import type { SourceKey } from "../../../core/sources.ts";
import { cylinder, got, heldFrac, mixOf, worked } from "./build-mix.ts";

/**
 * independent: neither the components nor the packing rule were set with the figure in view.
 * partly: the figure is among those that mark the range of a component, but did not set its centre.
 * guard: used in choosing a component's centre or the packing rule; guards the code only.
 */
type Label = "independent" | "partly" | "guard";

interface Case {
  readonly what: string;
  readonly key: SourceKey;
  readonly label: Label;
  readonly status: "read-in-source" | "from-memory";
  readonly model: () => number;
  readonly printed: number;
  /** Agreement that the honest error of a library value allows. */
  readonly tolerance: number;
  /** Model less printed where it is worse than the tolerance: shown here and not tuned away. */
  readonly miss?: number;
}

const library = componentsById();

function changed(id: string, more: { dryDensity?: number; porosity?: number }): Component {
  const component = library.get(id)!;
  const fixed = (value: number) => ({ low: value, mid: value, high: value });
  return {
    ...component,
    ...(more.dryDensity === undefined ? {} : { dryDensityKgPerL: fixed(more.dryDensity) }),
    ...(more.porosity === undefined ? {} : { totalPorosityFrac: fixed(more.porosity) }),
  };
}

function peatPerlitePorosity(perliteFrac: number): number {
  return blendOf([
    { component: changed("peat", { porosity: 0.8335 }), shareFrac: 1 - perliteFrac },
    { component: changed("perlite", { porosity: 0.636 }), shareFrac: perliteFrac },
  ]).retention.totalPorosityFrac;
}

/** Fall of the density of a loam of 1.2 kg/L with half pumice of 0.6 kg/L (densities from memory). */
function loamPumiceFall(): number {
  const half = { shareFrac: 0.5 };
  const mixed = blendOf([
    { component: changed("garden-loam", { dryDensity: 1.2 }), ...half },
    { component: changed("pumice", { dryDensity: 0.6 }), ...half },
  ]);
  return mixed.dryDensityKgPerL / 1.2 - 1;
}

const waterAt = (mix: WorkedMix, suctionCm: number) => waterFracAt(mix.retention, suctionCm);
const SAND_PEAT = { "coarse-sand": 42.5, "fine-sand": 42.5, peat: 15 };
const SAND_CLAY = { "coarse-sand": 42.5, "fine-sand": 42.5, "calcined-clay": 15 };

const BLENDS: readonly Case[] = [
  {
    what: "peat with 20 % perlite: total porosity (its own components, from the published line)",
    key: "EVANS2004",
    label: "guard",
    status: "read-in-source",
    model: () => peatPerlitePorosity(0.2),
    printed: 0.794,
    tolerance: 0.005,
  },
  {
    what: "peat with 60 % perlite: total porosity",
    key: "EVANS2004",
    label: "guard",
    status: "read-in-source",
    model: () => peatPerlitePorosity(0.6),
    printed: 0.715,
    tolerance: 0.005,
    miss: -0.019,
  },
  {
    what: "coir and perlite 3:1: total porosity",
    key: "ILAHI2017",
    label: "guard",
    status: "read-in-source",
    model: () => worked({ "coco-peat": 3, perlite: 1 }).retention.totalPorosityFrac,
    printed: 0.79,
    tolerance: 0.06,
    miss: 0.105,
  },
  {
    what: "loam with half pumice: fall of the density, first soil",
    key: "SAHIN2006",
    label: "guard",
    status: "read-in-source",
    model: loamPumiceFall,
    printed: -0.248,
    tolerance: 0.04,
    miss: 0.045,
  },
  {
    what: "loam with half pumice: fall of the density, second soil",
    key: "SAHIN2006",
    label: "guard",
    status: "read-in-source",
    model: loamPumiceFall,
    printed: -0.21,
    tolerance: 0.04,
  },
  {
    what: "soil, vermicompost and coir 1:1:1: density (basis of the parts not seen)",
    key: "KUKAL2012",
    label: "independent",
    status: "read-in-source",
    model: () => worked({ "garden-loam": 1, vermicompost: 1, "coco-peat": 1 }).dryDensityKgPerL,
    printed: 1.32 * (1 - 0.275),
    tolerance: 0.1,
    miss: -0.346,
  },
  {
    what: "root-zone sand with 15 % fibrous peat: water at 30 cm (half coarse, half fine sand: our choice)",
    key: "MCCOY2013",
    label: "independent",
    status: "read-in-source",
    model: () => waterAt(worked(SAND_PEAT), 30),
    printed: 0.2,
    tolerance: 0.02,
  },
];

const SINGLES: readonly Case[] = [
  {
    what: "peat, core 7.6 cm",
    key: "BOYER2012",
    label: "partly",
    status: "read-in-source",
    model: () => heldFrac(worked({ peat: 1 }), cylinder(7.6)),
    printed: 0.87,
    tolerance: 0.04,
    miss: -0.078,
  },
  {
    what: "coir at 10 cm, one lot",
    key: "SOTO2022",
    label: "partly",
    status: "read-in-source",
    model: () => waterAt(worked({ "coco-peat": 1 }), 10),
    printed: 0.772,
    tolerance: 0.04,
    miss: -0.092,
  },
  {
    what: "pine bark, core 7.6 cm",
    key: "BOYER2012",
    label: "guard",
    status: "read-in-source",
    model: () => heldFrac(worked({ "pine-bark-fine": 1 }), cylinder(7.6)),
    printed: 0.48,
    tolerance: 0.005,
  },
  {
    what: "bark medium, 15.2 cm (height from memory)",
    key: "BILDERBACK1987",
    label: "independent",
    status: "read-in-source",
    model: () => heldFrac(worked({ "pine-bark-fine": 1 }), cylinder(15.2)),
    printed: 0.43,
    tolerance: 0.04,
  },
  {
    what: "bark medium, 5.5 cm (height from memory): the slope with height is too flat",
    key: "BILDERBACK1987",
    label: "independent",
    status: "read-in-source",
    model: () => heldFrac(worked({ "pine-bark-fine": 1 }), cylinder(5.5)),
    printed: 0.59,
    tolerance: 0.04,
    miss: -0.07,
  },
  {
    what: "basaltic lapilli, water retained",
    key: "LUQUE1982",
    label: "guard",
    status: "read-in-source",
    model: () => heldFrac(worked({ lava: 1 }), cylinder(9)),
    printed: 0.186,
    tolerance: 0.02,
  },
  {
    what: "perlite of 1-2 mm, total porosity (ours is 3-6 mm)",
    key: "ANICUA2008",
    label: "independent",
    status: "read-in-source",
    model: () => worked({ perlite: 1 }).retention.totalPorosityFrac,
    printed: 0.85,
    tolerance: 0.06,
  },
  {
    what: "coir fibre of 1-2 mm, total porosity",
    key: "ANICUA2008",
    label: "independent",
    status: "read-in-source",
    model: () => worked({ "coco-peat": 1 }).retention.totalPorosityFrac,
    printed: 0.943,
    tolerance: 0.06,
  },
  {
    what: "scoria of 2-3.4 mm, total porosity",
    key: "ANICUA2008",
    label: "independent",
    status: "read-in-source",
    model: () => worked({ lava: 1 }).retention.totalPorosityFrac,
    printed: 0.675,
    tolerance: 0.06,
  },
  {
    what: "vermicompost of 2-3.4 mm, total porosity",
    key: "ANICUA2008",
    label: "independent",
    status: "read-in-source",
    model: () => worked({ vermicompost: 1 }).retention.totalPorosityFrac,
    printed: 0.677,
    tolerance: 0.06,
    miss: 0.073,
  },
];

/** Home tests that set no centre: sand and bark in cups, peat as watered, a pot of vermiculite. */
const HOME_TESTS: readonly Case[] = (
  [
    ["coarse-sand", 5, 0.24, 0.073],
    ["coarse-sand", 15, 0.28, -0.077],
    ["pine-bark-coarse", 5, 0.31, undefined],
    ["vermiculite", 15, 0.48, 0.095],
    ["peat", 5, 0.58, 0.243],
    ["peat", 15, 0.58, 0.138],
  ] as const
).map(([id, heightCm, printed, miss]) => ({
  what: `${id} in a cup or pot of some ${heightCm} cm (height assumed)`,
  key: "CUPTESTS",
  label: "independent",
  status: "read-in-source",
  model: () => heldFrac(worked({ [id]: 1 }), cylinder(heightCm)),
  printed,
  tolerance: 0.05,
  ...(miss === undefined ? {} : { miss }),
}));

function check({ model, printed, tolerance, miss }: Case): void {
  const error = model() - printed;
  if (miss === undefined) {
    expect(Math.abs(error)).toBeLessThanOrEqual(tolerance);
    return;
  }
  expect(Math.abs(error)).toBeGreaterThan(tolerance);
  expect(Math.abs(error - miss)).toBeLessThan(0.0015);
}

const title = "$label [$key] $what: printed $printed, misses by $miss";

describe("published blends", () => {
  test.each(BLENDS)(title, check);

  test("[WALTZ2003] independent: calcined clay in place of peat holds 0.021 to 0.084 less beyond 25 cm", () => {
    for (const suctionCm of [30, 40, 50]) {
      const less = waterAt(worked(SAND_PEAT), suctionCm) - waterAt(worked(SAND_CLAY), suctionCm);
      expect(less).toBeGreaterThanOrEqual(0.021);
      expect(less).toBeLessThanOrEqual(0.084);
    }
  });
});

describe("published single components", () => {
  test.each(SINGLES)(title, check);
});

describe("home tests of single components, none of them reviewed", () => {
  test.each(HOME_TESTS)(title, check);

  test("[CUPTESTS] independent: no water perches in grains of 3 mm and more, 5 cm or so in sand of 1 mm", () => {
    const halfDrainedCm = (id: string) => {
      const { retention } = worked({ [id]: 1 });
      const { residualFrac, saturatedFrac } = library.get(id)!.curve;
      return suctionCmAt(retention, (residualFrac + saturatedFrac) / 2);
    };
    for (const id of ["grit", "pumice", "perlite", "lava"]) expect(halfDrainedCm(id)).toBeLessThan(1.5);
    expect(halfDrainedCm("coarse-sand")).toBeGreaterThan(2.5);
    expect(halfDrainedCm("coarse-sand")).toBeLessThan(6.5);
  });
});

describe("the stated ranges are honest", () => {
  const HELD = [
    ["peat", 7.6, 0.87],
    ["pine-bark-fine", 7.6, 0.48],
    ["pine-bark-fine", 15.2, 0.43],
    ["pine-bark-fine", 5.5, 0.59],
    ["coarse-sand", 5, 0.24],
    ["pine-bark-coarse", 5, 0.31],
    ["vermiculite", 15, 0.48],
    ["peat", 5, 0.58],
    ["peat", 15, 0.58],
  ] as const;

  test.each(HELD)(
    "%s in %s cm: the printed %s lies in the range, missed centre or not",
    (id, heightCm, printed) => {
      const vessel = cylinder(heightCm);
      const { hold, ranges } = got(mixInVessel({ mix: mixOf({ [id]: 1 }), vessel, components: library }));
      expect(printed).toBeGreaterThanOrEqual(ranges.capacityFactor.low * hold.capacityFrac);
      expect(printed).toBeLessThanOrEqual(ranges.capacityFactor.high * hold.capacityFrac);
    },
  );

  test("one does not: a pot of sand drained for a day held 0.28, some 15 cm tall (assumed); our range ends at 0.26", () => {
    const vessel = cylinder(15);
    const { hold, ranges } = got(
      mixInVessel({ mix: mixOf({ "coarse-sand": 1 }), vessel, components: library }),
    );
    expect(ranges.capacityFactor.high * hold.capacityFrac).toBeCloseTo(0.255, 2);
  });
});

type Sign = "up" | "down";

interface SignCase {
  readonly what: string;
  readonly key: SourceKey;
  readonly from: Readonly<Record<string, number>>;
  readonly to: Readonly<Record<string, number>>;
  readonly porosity: Sign;
  readonly capacity: Sign;
  readonly air?: Sign;
  readonly density: Sign;
  /** Figures of which the model gets the direction wrong. */
  readonly wrong?: readonly string[];
}

const BARK = { "pine-bark-fine": 100 };
const bark = (more: Readonly<Record<string, number>>) => ({ "pine-bark-fine": 80, ...more });

const SIGNS: readonly SignCase[] = [
  {
    what: "bark + fine sand",
    key: "PINEBARK2020",
    from: BARK,
    to: bark({ "fine-sand": 20 }),
    porosity: "down",
    capacity: "up",
    air: "down",
    density: "up",
  },
  {
    what: "bark + coarse sand",
    key: "PINEBARK2020",
    from: BARK,
    to: bark({ "coarse-sand": 20 }),
    porosity: "down",
    capacity: "up",
    air: "down",
    density: "up",
    wrong: ["capacity"],
  },
  {
    what: "bark + pumice",
    key: "GABRIEL2009",
    from: BARK,
    to: bark({ pumice: 20 }),
    porosity: "down",
    capacity: "down",
    density: "up",
  },
  {
    what: "bark + peat",
    key: "GABRIEL2009",
    from: BARK,
    to: bark({ peat: 20 }),
    porosity: "up",
    capacity: "up",
    air: "down",
    density: "down",
  },
  {
    what: "peat, perlite from 20 to 60 %",
    key: "EVANS2004",
    from: { peat: 80, perlite: 20 },
    to: { peat: 40, perlite: 60 },
    porosity: "down",
    capacity: "down",
    air: "up",
    density: "up",
  },
];

describe("directions of change [independent, read in abstracts]", () => {
  test.each(SIGNS)(
    "$key $what; wrong direction: $wrong",
    ({ from, to, porosity, capacity, air, density, wrong = [] }) => {
      const figures = (recipe: Readonly<Record<string, number>>) => {
        const mix = worked(recipe);
        const capacityFrac = heldFrac(mix, cylinder(7.6));
        const porosityFrac = mix.retention.totalPorosityFrac;
        return {
          porosity: porosityFrac,
          capacity: capacityFrac,
          air: porosityFrac - capacityFrac,
          density: mix.dryDensityKgPerL,
        };
      };
      const before = figures(from);
      const after = figures(to);
      for (const [name, sign] of Object.entries({ porosity, capacity, air, density })) {
        if (sign === undefined) continue;
        const rose = after[name as keyof typeof after] > before[name as keyof typeof before];
        expect({ name, right: rose === (sign === "up") }).toEqual({ name, right: !wrong.includes(name) });
      }
    },
  );
});

describe("shrinkage", () => {
  const grains = (grainMm: number, shareFrac: number) => ({ grainMm, shareFrac, trickles: true });
  const shrinkAt = (coarseFrac: number, ratio: number) =>
    shrinkFrac([grains(1, coarseFrac), grains(ratio, 1 - coarseFrac)]);

  test("[BURES1993] independent: bark and sand shrink most with 50 to 70 % coarse", () => {
    for (const ratio of [0.1, 0.2, 0.3, 0.5]) {
      const shares = Array.from({ length: 99 }, (_, i) => (i + 1) / 100);
      const most = shares.reduce((best, share) =>
        shrinkAt(share, ratio) > shrinkAt(best, ratio) ? share : best,
      );
      expect(most).toBeGreaterThanOrEqual(0.5);
      expect(most).toBeLessThanOrEqual(0.7);
    }
  });

  test("[BROWN1975] independent: a mix of bark and sand is smaller than its parts", () => {
    for (const share of [0.1, 0.3, 0.5, 0.7, 0.9]) {
      const mix = worked({ "pine-bark-fine": share, "coarse-sand": 1 - share });
      expect(mix.shrinkFrac).toBeGreaterThan(0);
    }
  });

  test("grains of one size do not shrink, none shrinks below zero or beyond a quarter", () => {
    expect(shrinkFrac([grains(2, 0.4), grains(2, 0.6)])).toBe(0);
    expect(shrinkFrac([grains(2, 1)])).toBe(0);
    for (const ratio of [0.001, 0.05, 0.5, 0.99]) {
      for (const share of [0.01, 0.5, 0.68, 0.99]) {
        expect(shrinkAt(share, ratio)).toBeGreaterThanOrEqual(0);
        expect(shrinkAt(share, ratio)).toBeLessThanOrEqual(0.25);
      }
    }
  });
});

test("no case is lost", () => {
  expect(BLENDS.length).toBe(7);
  expect(SINGLES.length).toBe(10);
  expect(HOME_TESTS.length).toBe(6);
  expect(SIGNS.length).toBe(5);
  expect([...BLENDS, ...SINGLES, ...HOME_TESTS].filter(({ miss }) => miss !== undefined).length).toBe(13);
});
