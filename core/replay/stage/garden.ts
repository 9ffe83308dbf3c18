import type { Mix } from "../../mix/mix.ts";
import type { Vessel } from "../../pot/vessel.ts";
import type { Site } from "../../site/site.ts";
import type { Spot } from "../../site/spot.ts";
import type { Stage, StagePot } from "../world/known-pot.ts";

/** Spots of the invented garden: open to all weather, under a porch, behind glass in a mild room. */
export const GARDEN_SPOTS: readonly Spot[] = [
  {
    id: "yard",
    name: "Yard",
    kind: "open",
    skyFrac: 0.85,
    sunFrac: 0.95,
    windFrac: 0.35,
    rainFrac: 1,
    nightWarmthC: 0,
    walkOrder: 1,
    carry: "same-level",
  },
  {
    id: "porch",
    name: "Porch",
    kind: "roofed",
    skyFrac: 0.35,
    sunFrac: 0.5,
    windFrac: 0.2,
    rainFrac: 0.02,
    nightWarmthC: 1.5,
    walkOrder: 2,
    carry: "few-steps",
  },
  {
    id: "glass-room",
    name: "Glass room",
    kind: "indoors",
    skyFrac: 0.6,
    sunFrac: 0.75,
    windFrac: 0.03,
    rainFrac: 0,
    nightWarmthC: 0,
    heatedToC: 16,
    walkOrder: 3,
    carry: "same-level",
  },
];

export const GARDEN_MIXES: readonly Mix[] = [
  {
    id: "stony",
    name: "Stony",
    recipe: {
      kind: "parts",
      parts: [
        { component: "pumice", parts: 4 },
        { component: "grit", parts: 2 },
        { component: "coco-chips", parts: 2 },
        { component: "vermicompost", parts: 1 },
      ],
    },
  },
  {
    id: "barky",
    name: "Barky",
    recipe: {
      kind: "parts",
      parts: [
        { component: "pine-bark-fine", parts: 4 },
        { component: "perlite", parts: 3 },
        { component: "coco-peat", parts: 2 },
        { component: "vermicompost", parts: 1 },
      ],
    },
  },
];

type Measures = readonly [topCm: number, baseCm: number, heightCm: number];

const vessel = ([topCm, baseCm, heightCm]: Measures, material: Vessel["material"]): Vessel => ({
  shape: "round",
  topCm,
  baseCm,
  heightCm,
  material,
  rimGapCm: 2,
});

/** What people grow the eight groups in, more or less. Invented. */
const PLANTS: readonly {
  groupId: string;
  measures: Measures;
  material: Vessel["material"];
  canopyWidthCm: number;
  plantHeightCm: number;
}[] = [
  {
    groupId: "desert-rose",
    measures: [24, 18, 18],
    material: "unglazed",
    canopyWidthCm: 35,
    plantHeightCm: 40,
  },
  {
    groupId: "plumeria-deciduous",
    measures: [28, 21, 26],
    material: "plastic",
    canopyWidthCm: 50,
    plantHeightCm: 80,
  },
  {
    groupId: "cactus-desert",
    measures: [17, 13, 15],
    material: "unglazed",
    canopyWidthCm: 14,
    plantHeightCm: 16,
  },
  {
    groupId: "aloe-summer",
    measures: [22, 16, 20],
    material: "plastic",
    canopyWidthCm: 35,
    plantHeightCm: 35,
  },
  {
    groupId: "bougainvillea",
    measures: [30, 22, 28],
    material: "plastic",
    canopyWidthCm: 55,
    plantHeightCm: 90,
  },
  { groupId: "citrus", measures: [36, 28, 34], material: "glazed", canopyWidthCm: 60, plantHeightCm: 90 },
  {
    groupId: "pelargonium",
    measures: [18, 13, 16],
    material: "plastic",
    canopyWidthCm: 28,
    plantHeightCm: 30,
  },
  { groupId: "hibiscus", measures: [28, 20, 26], material: "plastic", canopyWidthCm: 50, plantHeightCm: 70 },
];

/** Groups that hold water in their bodies; they stand in the stony mix and have their roots pruned. */
const STORES_WATER = new Set(["desert-rose", "plumeria-deciduous", "cactus-desert", "aloe-summer"]);

/** Eight pots, one a group, all repotted in late spring. */
export const GARDEN_POTS: readonly StagePot[] = PLANTS.map((plant) => {
  const stores = STORES_WATER.has(plant.groupId);
  return {
    pot: {
      id: plant.groupId,
      name: plant.groupId,
      groupId: plant.groupId,
      canopyWidthCm: plant.canopyWidthCm,
      plantHeightCm: plant.plantHeightCm,
      firstSpotId: "yard",
    },
    vessel: vessel(plant.measures, plant.material),
    mixId: stores ? "stony" : "barky",
    homeSpotId: "yard",
    repot: { month: 5, dayOfMonth: 20, roots: stores ? "pruned" : "teased" },
  };
});

/** The invented garden at a site, with all of its pots or those of some groups. */
export function gardenAt(site: Site, groupIds: readonly string[] = []): Stage {
  const pots = GARDEN_POTS.filter(({ pot }) => groupIds.length === 0 || groupIds.includes(pot.groupId));
  return { site, spots: GARDEN_SPOTS, mixes: GARDEN_MIXES, pots };
}
