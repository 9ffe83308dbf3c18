import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Finding, Purpose } from "../../../core/mix/finding.ts";
import { applied, fitness } from "../../../core/mix/fitness.ts";
import { COMPONENTS, componentsById } from "../../../core/mix/library.ts";
import type { MixPart } from "../../../core/mix/mix.ts";
import { cylinder, got, parts, problemsOf } from "./build-mix.ts";

const components = componentsById();
const DROUGHT: Purpose = { leafy: false };
const LEAFY: Purpose = { leafy: true };

function judge(recipe: readonly MixPart[], purpose: Purpose, heightCm?: number): Finding[] {
  const vessel = heightCm === undefined ? {} : { vessel: cylinder(heightCm) };
  return got(fitness({ parts: recipe, components, purpose, ...vessel }));
}

function codesOf(recipe: Readonly<Record<string, number>>, purpose: Purpose, heightCm?: number): string[] {
  return judge(parts(recipe), purpose, heightCm).map(({ code }) => code);
}

describe("what growers would change in a mix", () => {
  test("common practice: half to seven tenths draining for the drought-adapted is left in peace", () => {
    expect(codesOf({ pumice: 6, "coco-peat": 4 }, DROUGHT, 15)).toEqual([]);
    expect(codesOf({ pumice: 5, "coco-peat": 5 }, DROUGHT, 15)).toEqual([]);
    expect(codesOf({ pumice: 4, "coco-peat": 6 }, DROUGHT)).toContain("too-little-draining");
    expect(codesOf({ pumice: 8, "coco-peat": 2 }, DROUGHT)).toContain("too-much-draining");
  });

  test("common practice: compost above a quarter, garden soil and fine sand above a fifth", () => {
    expect(codesOf({ "coco-peat": 3, vermicompost: 1 }, LEAFY)).not.toContain("too-much-compost");
    expect(codesOf({ "coco-peat": 2, vermicompost: 1 }, LEAFY)).toContain("too-much-compost");
    expect(codesOf({ "coco-peat": 4, "garden-loam": 1 }, LEAFY)).not.toContain("too-much-garden-soil");
    expect(codesOf({ "coco-peat": 3, "garden-loam": 1 }, LEAFY)).toContain("too-much-garden-soil");
    expect(codesOf({ "coco-peat": 3, "fine-sand": 1 }, LEAFY)).toContain("fine-sand-clogs");
  });

  test("wetter for the leafy, leaner for a compact shape", () => {
    expect(codesOf({ pumice: 3, "coco-peat": 1 }, LEAFY, 15)).toEqual([
      "too-open-for-leafy",
      "holds-little-for-leafy",
    ]);
    expect(codesOf({ pumice: 3, "coco-peat": 2, vermicompost: 1 }, DROUGHT)).not.toContain(
      "rich-for-compact",
    );
    expect(codesOf({ pumice: 3, "coco-peat": 2, vermicompost: 1 }, { ...DROUGHT, compact: true })).toContain(
      "rich-for-compact",
    );
  });

  test("too little air and a base that stays wet are read off the reckoned pot", () => {
    expect(codesOf({ "fine-sand": 1, "garden-loam": 1 }, LEAFY, 12)).toEqual(
      expect.arrayContaining(["too-little-air", "wet-base-deep"]),
    );
    expect(codesOf({ perlite: 1, "coco-peat": 1 }, LEAFY, 20)).not.toContain("wet-base-deep");
  });

  test("dried peat sheds water until it has some coir in it", () => {
    expect(codesOf({ peat: 4, perlite: 1 }, LEAFY)).toContain("sheds-water-when-dry");
    expect(codesOf({ peat: 4, "coco-peat": 1, perlite: 1 }, LEAFY)).not.toContain("sheds-water-when-dry");
  });

  test("each says where it comes from and what share would be right, never a mark out of ten", () => {
    const [finding] = judge(parts({ peat: 3, pumice: 1 }), DROUGHT);
    expect(finding).toMatchObject({
      code: "too-little-draining",
      numbers: { shareFrac: 0.25, leastFrac: 0.5, mostFrac: 0.7 },
      status: "common-practice",
      source: null,
      cure: { component: "pumice", fromParts: 1, toParts: 3 },
    });
  });

  test("a cure may bring in what was not there", () => {
    const [finding] = judge(parts({ peat: 4 }), DROUGHT);
    expect(finding!.cure).toEqual({ component: "pumice", fromParts: 0, toParts: 4 });
  });

  test("every cure cures, in any mix", () => {
    const recipes = fc.uniqueArray(
      fc.record({
        component: fc.constantFrom(...COMPONENTS.map(({ id }) => id)),
        parts: fc.integer({ min: 1, max: 10 }),
      }),
      { minLength: 1, maxLength: 4, selector: ({ component }) => component },
    );
    fc.assert(
      fc.property(recipes, fc.boolean(), fc.boolean(), (recipe, leafy, compact) => {
        for (const { code, cure } of judge(recipe, { leafy, compact }, 15)) {
          if (cure === null) continue;
          expect(cure.toParts).not.toBe(cure.fromParts);
          const after = judge(applied(recipe, cure), { leafy, compact }, 15).map((finding) => finding.code);
          expect(after).not.toContain(code);
        }
      }),
      { numRuns: 60 },
    );
  });

  test("rules on parts alone always have a cure", () => {
    for (const { id } of COMPONENTS) {
      for (const purpose of [DROUGHT, LEAFY, { ...LEAFY, compact: true }]) {
        for (const finding of judge(parts({ [id]: 3 }), purpose)) {
          if (finding.status === "common-practice")
            expect(finding.cure, `${id} ${finding.code}`).not.toBeNull();
        }
      }
    }
  });

  test("a mix that holds too little for leafy plants has a cure, though more of its own holder would not do", () => {
    for (const recipe of [
      parts({ pumice: 3, grit: 1, "coco-peat": 1, "pine-bark-fine": 2 }),
      parts({ "expanded-clay": 3, "garden-loam": 5 }),
    ]) {
      const finding = judge(recipe, LEAFY, 18).find(({ code }) => code === "holds-little-for-leafy");
      expect(["coco-peat", "peat"]).toContain(finding!.cure!.component);
    }
  });

  test("faults in the recipe and the vessel are told together", () => {
    const came = fitness({ parts: parts({ sand: -1 }), components, purpose: LEAFY, vessel: cylinder(0) });
    expect(problemsOf(came).map(({ path }) => path)).toEqual([
      "parts.0.component",
      "parts.0.parts",
      "vessel.heightCm",
    ]);
  });
});
