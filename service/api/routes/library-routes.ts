import { z } from "zod";
import { componentsById } from "../../../core/mix/library.ts";
import { porosityTestByScale } from "../../../core/mix/porosity-by-scale.ts";
import { porosityOf, porosityTestProblems } from "../../../core/mix/porosity-test.ts";
import { GROUPS } from "../../../core/plant/groups.ts";
import { GroupSchema } from "../../case/group-schema.ts";
import { ComponentSchema, MixPartsSchema, PorosityTestSchema } from "../../case/mix-schema.ts";
import { SpotSchema } from "../../case/site-schema.ts";
import { READY_MIXES } from "../../pages/begin/ready-mixes.ts";
import { READY_SPOTS } from "../../pages/begin/ready-spots.ts";
import { type ApiRoute, unfit } from "../api-route.ts";
import { PartQuery, partOf, partSchema } from "../page-of.ts";

const group = "library";

const ReadyMix = z.object({ id: z.string(), parts: MixPartsSchema });
const ReadySpot = SpotSchema.omit({ name: true, walkOrder: true });

const kg = z.number().min(0).max(1000);
const TestAsk = z.discriminatedUnion("by", [
  z.strictObject({ by: z.literal("jug"), ...PorosityTestSchema.shape }),
  z.strictObject({
    by: z.literal("scale"),
    potMl: PorosityTestSchema.shape.potMl,
    filledKg: kg,
    soakedKg: kg,
    drainedKg: kg,
    heldBeforeMl: PorosityTestSchema.shape.heldBeforeMl,
  }),
]);

const Porosity = z.object({
  test: PorosityTestSchema.describe("As a mix keeps it under `test`."),
  totalPorosityFrac: z.number(),
  airSpaceFrac: z.number(),
  capacityFrac: z.number(),
});

const ready = <T extends object>(all: Readonly<Record<string, T>>) =>
  Object.entries(all).map(([id, one]) => ({ id, ...one }));
const items = <T extends z.ZodType>(one: T) => z.object({ items: z.array(one) });

/** What everybody has to begin with, the same in every house. */
export const libraryRoutes: readonly ApiRoute[] = [
  {
    method: "GET",
    path: "/library/components",
    id: "listLibrary",
    group,
    summary: "Components of mixes, with range and source",
    query: PartQuery,
    answer: partSchema(ComponentSchema),
    async handle({ query }) {
      return partOf([...componentsById().values()], { asked: query, idOf: ({ id }) => id });
    },
  },
  {
    method: "GET",
    path: "/library/groups",
    id: "listLibraryGroups",
    group,
    summary: "Groups of plants, each value with its evidence",
    answer: items(GroupSchema),
    handle: async () => ({ body: { items: GROUPS } }),
  },
  {
    method: "GET",
    path: "/library/spots",
    id: "listReadySpots",
    group,
    summary: "Kinds of places to begin a spot from",
    answer: items(ReadySpot),
    handle: async () => ({ body: { items: ready(READY_SPOTS) } }),
  },
  {
    method: "GET",
    path: "/library/mixes",
    id: "listReadyMixes",
    group,
    summary: "Mixes to begin one from",
    answer: items(ReadyMix),
    async handle() {
      return { body: { items: Object.entries(READY_MIXES).map(([id, parts]) => ({ id, parts })) } };
    },
  },
  {
    method: "POST",
    path: "/porosity-test",
    id: "porosityTest",
    group,
    summary: "Reads the grower's own test of a mix, by jug or by scale; keeps nothing",
    body: TestAsk,
    answer: Porosity,
    async handle({ body: { by, ...given } }) {
      const read = by === "scale" ? porosityTestByScale(given) : testByJug(given);
      return read.ok ? { body: { test: read.value, ...porosityOf(read.value) } } : unfit(read.problems);
    },
  },
];

function testByJug(test: z.output<typeof PorosityTestSchema>) {
  const problems = porosityTestProblems(test);
  return problems.length > 0 ? { ok: false as const, problems } : { ok: true as const, value: test };
}
