import type { RootWork } from "../core/journal/entry.ts";
import type { MixId } from "../core/mix/mix.ts";
import type { Pot } from "../core/pot/pot.ts";
import type { Vessel } from "../core/pot/vessel.ts";

/** A pot of the roof and how it was last planted. */
export interface HarbourPot {
  readonly pot: Pot;
  readonly vessel: Vessel;
  readonly mixId: MixId;
  /** Day of planting relative to today, always past. */
  readonly plantedDay: number;
  readonly roots: RootWork;
}

type Material = Vessel["material"];

// Rim, base and height in the order in which a pot is measured.
function round(topCm: number, baseCm: number, heightCm: number): Vessel {
  return { shape: "round", topCm, baseCm, heightCm, material: "plastic", rimGapCm: 2 };
}

const of = (material: Material, emptyMassKg: number, vessel: Vessel): Vessel => ({
  ...vessel,
  material,
  emptyMassKg,
});

const saucer = (saucerCm: number, vessel: Vessel): Vessel => ({ ...vessel, saucerCm });
const dressed = (topDressingCm: number, vessel: Vessel): Vessel => ({ ...vessel, topDressingCm });

const tray = (topCm: number, heightCm: number): Vessel => ({
  shape: "square",
  topCm,
  baseCm: topCm - 2,
  heightCm,
  material: "glazed",
  rimGapCm: 0.5,
  emptyMassKg: 1.6,
});

/** Long settled: planted before the diary begins, roots left alone. */
const settled = { plantedDay: -60, roots: "undisturbed" } as const;

export const HARBOUR_POTS: readonly HarbourPot[] = [
  {
    pot: {
      id: "lemon",
      name: "Rail lemon",
      groupId: "citrus",
      canopyWidthCm: 80,
      plantHeightCm: 105,
      firstSpotId: "sea-rail",
    },
    vessel: of("glazed", 9, round(42, 31, 38)),
    mixId: "spar",
    ...settled,
  },
  {
    pot: {
      id: "bitter-orange",
      name: "Bitter orange",
      groupId: "citrus",
      canopyWidthCm: 55,
      plantHeightCm: 70,
      firstSpotId: "sea-rail",
    },
    vessel: of("unglazed", 6, round(34, 25, 31)),
    mixId: "spar",
    ...settled,
  },
  {
    pot: {
      id: "olive",
      name: "Old olive",
      groupId: "olive",
      canopyWidthCm: 70,
      plantHeightCm: 130,
      firstSpotId: "sea-rail",
    },
    vessel: of("unglazed", 14, round(48, 36, 44)),
    mixId: "spar",
    ...settled,
  },
  {
    pot: {
      id: "bougainvillea",
      name: "Lantern bougainvillea",
      groupId: "bougainvillea",
      canopyWidthCm: 60,
      plantHeightCm: 110,
      firstSpotId: "sea-rail",
    },
    vessel: round(32, 24, 29),
    mixId: "spar",
    ...settled,
  },
  {
    pot: {
      id: "geraniums",
      name: "Stair pelargoniums",
      groupId: "pelargonium",
      count: 6,
      canopyWidthCm: 24,
      plantHeightCm: 28,
      firstSpotId: "sea-rail",
    },
    vessel: round(16, 11, 14),
    mixId: "spar",
    ...settled,
  },
  {
    pot: {
      id: "rose-geranium",
      name: "Rose-scented pelargonium",
      groupId: "pelargonium",
      canopyWidthCm: 40,
      plantHeightCm: 45,
      firstSpotId: "sea-rail",
    },
    vessel: of("unglazed", 2.4, round(24, 17, 22)),
    mixId: "spar",
    ...settled,
  },
  {
    pot: {
      id: "hibiscus",
      name: "Signal-red hibiscus",
      groupId: "hibiscus",
      canopyWidthCm: 50,
      plantHeightCm: 75,
      firstSpotId: "sea-rail",
    },
    vessel: saucer(2, round(30, 22, 28)),
    mixId: "spar",
    ...settled,
  },
  {
    pot: {
      id: "agave",
      name: "Grey agave",
      groupId: "agave",
      canopyWidthCm: 60,
      plantHeightCm: 45,
      firstSpotId: "sea-rail",
    },
    vessel: dressed(2, of("unglazed", 8, round(40, 30, 34))),
    mixId: "ballast",
    ...settled,
  },
  {
    pot: {
      id: "frangipani-tall",
      name: "Tall frangipani",
      groupId: "plumeria-deciduous",
      canopyWidthCm: 75,
      plantHeightCm: 150,
      firstSpotId: "chart-wall",
    },
    vessel: round(38, 29, 36),
    mixId: "ballast",
    ...settled,
  },
  {
    pot: {
      id: "frangipani-cut",
      name: "Frangipani with cut roots",
      groupId: "plumeria-deciduous",
      canopyWidthCm: 40,
      plantHeightCm: 70,
      firstSpotId: "chart-wall",
    },
    vessel: round(26, 20, 25),
    mixId: "ballast",
    plantedDay: -4,
    roots: "pruned",
  },
  {
    pot: {
      id: "desert-rose-old",
      name: "Old desert rose",
      groupId: "desert-rose",
      canopyWidthCm: 38,
      plantHeightCm: 45,
      firstSpotId: "chart-wall",
    },
    vessel: of("glazed", 4, round(34, 26, 18)),
    mixId: "ballast",
    ...settled,
  },
  {
    pot: {
      id: "desert-rose-cut",
      name: "Desert rose, root-pruned",
      groupId: "desert-rose",
      canopyWidthCm: 26,
      plantHeightCm: 35,
      firstSpotId: "chart-wall",
    },
    vessel: of("unglazed", 2.2, round(24, 18, 15)),
    mixId: "ballast",
    plantedDay: -3,
    roots: "pruned",
  },
  {
    pot: {
      id: "milk-spurge",
      name: "Thorny spurge",
      groupId: "euphorbia-thorny",
      canopyWidthCm: 30,
      plantHeightCm: 50,
      firstSpotId: "chart-wall",
    },
    vessel: round(22, 16, 20),
    mixId: "ballast",
    ...settled,
  },
  {
    pot: {
      id: "barrel",
      name: "Barrel cactus",
      groupId: "cactus-desert",
      canopyWidthCm: 24,
      plantHeightCm: 22,
      firstSpotId: "chart-wall",
    },
    vessel: dressed(1.5, of("unglazed", 3, round(28, 21, 20))),
    mixId: "ballast",
    ...settled,
  },
  {
    pot: {
      id: "columns",
      name: "Column cacti",
      groupId: "cactus-desert",
      count: 3,
      canopyWidthCm: 11,
      plantHeightCm: 55,
      firstSpotId: "chart-wall",
    },
    vessel: dressed(1, round(16, 12, 16)),
    mixId: "ballast",
    ...settled,
  },
  {
    pot: {
      id: "tree-aloe",
      name: "Tree aloe",
      groupId: "aloe-summer",
      canopyWidthCm: 50,
      plantHeightCm: 80,
      firstSpotId: "chart-wall",
    },
    vessel: of("unglazed", 6, round(34, 26, 30)),
    mixId: "ballast",
    ...settled,
  },
  {
    pot: {
      id: "island-palm",
      name: "Island club-stem",
      groupId: "pachypodium-summer",
      canopyWidthCm: 28,
      plantHeightCm: 60,
      firstSpotId: "chart-wall",
    },
    vessel: round(22, 17, 24),
    mixId: "ballast",
    ...settled,
  },
  {
    pot: {
      id: "jade-cuttings",
      name: "Jade cuttings",
      groupId: "jade",
      count: 4,
      canopyWidthCm: 9,
      plantHeightCm: 12,
      firstSpotId: "lip-bench",
    },
    vessel: round(11, 8, 10),
    mixId: "ballast",
    plantedDay: -6,
    roots: "cutting",
  },
  {
    pot: {
      id: "winter-aloe",
      name: "Winter aloe",
      groupId: "aloe-winter",
      canopyWidthCm: 20,
      plantHeightCm: 14,
      firstSpotId: "lip-bench",
    },
    vessel: of("unglazed", 0.9, round(16, 12, 13)),
    mixId: "ballast",
    ...settled,
  },
  {
    pot: {
      id: "melon-cactus",
      name: "Melon cactus",
      groupId: "cactus-warm",
      canopyWidthCm: 15,
      plantHeightCm: 14,
      firstSpotId: "lip-bench",
    },
    vessel: dressed(1, round(17, 13, 14)),
    mixId: "ballast",
    ...settled,
  },
  {
    pot: {
      id: "quay-fig",
      name: "Quay fig, in a tray",
      groupId: "fig-bonsai",
      canopyWidthCm: 42,
      plantHeightCm: 38,
      firstSpotId: "lip-bench",
    },
    vessel: tray(36, 7),
    mixId: "keel",
    ...settled,
  },
  {
    pot: {
      id: "kumquat",
      name: "Convalescent kumquat",
      groupId: "citrus",
      canopyWidthCm: 45,
      plantHeightCm: 60,
      firstSpotId: "sea-rail",
    },
    vessel: round(30, 22, 28),
    mixId: "spar",
    ...settled,
  },
  {
    pot: {
      id: "frangipani-white",
      name: "Evergreen frangipani",
      groupId: "plumeria-evergreen",
      canopyWidthCm: 45,
      plantHeightCm: 80,
      firstSpotId: "chart-wall",
    },
    vessel: round(28, 21, 27),
    mixId: "ballast",
    plantedDay: -34,
    roots: "pruned",
  },
  {
    pot: {
      id: "leaf-cactus",
      name: "Leaf cactus",
      groupId: "cactus-epiphytic",
      canopyWidthCm: 35,
      plantHeightCm: 40,
      firstSpotId: "galley-sill",
    },
    vessel: round(20, 15, 17),
    mixId: "spar",
    ...settled,
  },
  {
    pot: {
      id: "sill-fig",
      name: "Sill fig, in a tray",
      groupId: "fig-bonsai",
      canopyWidthCm: 24,
      plantHeightCm: 22,
      firstSpotId: "galley-sill",
    },
    vessel: saucer(1, tray(22, 6)),
    mixId: "keel",
    ...settled,
  },
];
