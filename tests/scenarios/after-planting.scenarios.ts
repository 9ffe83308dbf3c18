import type { Scenario } from "./scenario.ts";
import { after, HOT, MILD, STORM, settled, WARM } from "./skies.ts";

const cool = { minC: 10, maxC: 15, cloudFrac: 0.7 };

/** Fresh roots: dry, sheltered, and watered in when leafy. Common practice; no trial is published. */
export const AFTER_PLANTING: readonly Scenario[] = [
  {
    situation: "a desert rose with pruned roots, potted yesterday, in a heat wave",
    why: "hot or not, cut roots close dry for about a week",
    sky: settled(HOT),
    pots: [{ id: "rose", group: "desert-rose", plantedDaysAgo: 1, roots: "pruned", plantedInto: "dry" }],
    expected: {
      rose: {
        asks: ["keep-dry"],
        never: ["water"],
        reason: "freshly-planted-dry",
        dryAtLeast: 4,
        dryAtMost: 9,
      },
    },
  },
  {
    situation: "the same, and a thunderstorm with a downpour tomorrow afternoon",
    why: "the first wetting is what is being put off, so it goes in before the storm",
    sky: after(HOT, HOT, STORM, WARM),
    pots: [{ id: "rose", group: "desert-rose", plantedDaysAgo: 1, roots: "pruned", plantedInto: "dry" }],
    expected: {
      rose: {
        asks: ["keep-dry", "carry-in"],
        never: ["water"],
        reason: "rain-on-fresh-roots",
        before: { day: 1, clock: 15 },
      },
    },
  },
  {
    situation: "a desert rose with pruned roots, potted in cool weather",
    why: "cuts close far more slowly in the cool: the wait grows",
    season: "autumn",
    sky: settled(cool),
    pots: [
      {
        id: "rose",
        group: "desert-rose",
        at: "shed",
        plantedDaysAgo: 1,
        roots: "pruned",
        plantedInto: "dry",
      },
    ],
    expected: { rose: { asks: ["keep-dry"], never: ["water"], dryAtLeast: 9 } },
  },
  {
    situation: "a lemon potted on yesterday evening and not yet watered",
    why: "a leafy plant is watered in at once",
    sky: settled(WARM),
    pots: [
      { id: "lemon", group: "citrus", rimCm: 30, plantedDaysAgo: 1, roots: "teased", plantedInto: "moist" },
    ],
    expected: { lemon: { first: "water", reason: "leafy-watered-in", never: ["keep-dry"] } },
  },
  {
    situation: "a lemon potted on yesterday and watered in",
    why: "it has had its water",
    sky: settled(MILD),
    pots: [
      {
        id: "lemon",
        group: "citrus",
        rimCm: 30,
        plantedDaysAgo: 1,
        roots: "teased",
        plantedInto: "watered-in",
      },
    ],
    expected: { lemon: { never: ["water", "keep-dry"] } },
  },
  {
    situation: "a bougainvillea set out with its ball whole, not watered",
    why: "leafy: water in, ball whole or not",
    sky: settled(WARM),
    pots: [{ id: "vine", group: "bougainvillea", rimCm: 26, plantedDaysAgo: 0.9, plantedInto: "moist" }],
    expected: { vine: { first: "water", reason: "leafy-watered-in" } },
  },
  {
    situation: "a cactus after rot surgery, four days in warm dry mix",
    why: "cut flesh is kept dry for two weeks and more",
    sky: settled(WARM),
    pots: [
      {
        id: "cactus",
        group: "cactus-desert",
        rimCm: 14,
        plantedDaysAgo: 4,
        roots: "rot-surgery",
        plantedInto: "dry",
      },
    ],
    expected: { cactus: { asks: ["keep-dry"], never: ["water"], dryAtLeast: 8, dryAtMost: 14 } },
  },
  {
    situation: "a cactus with teased roots, ten warm days after potting, bone dry",
    why: "its wait of some days is long over; the first drink is due",
    sky: settled(HOT),
    pots: [
      {
        id: "cactus",
        group: "cactus-warm",
        rimCm: 12,
        plantedDaysAgo: 10,
        roots: "teased",
        plantedInto: "dry",
      },
    ],
    expected: { cactus: { first: "water", reason: "first-drink-due" } },
  },
  {
    situation: "a succulent shifted with its ball whole three days ago and watered in",
    why: "nothing was cut and nothing is dry",
    sky: settled(MILD),
    pots: [
      {
        id: "aloe",
        group: "aloe-summer",
        rimCm: 18,
        plantedDaysAgo: 3,
        roots: "undisturbed",
        plantedInto: "watered-in",
      },
    ],
    expected: { aloe: { never: ["water", "keep-dry"] } },
  },
  {
    situation: "jade cuttings in a tray, five days in dry mix",
    why: "cuttings wait for their cut ends and first roots",
    sky: settled(WARM),
    pots: [
      {
        id: "cuttings",
        group: "jade",
        rimCm: 10,
        count: 12,
        plantedDaysAgo: 5,
        roots: "cutting",
        plantedInto: "dry",
      },
    ],
    expected: { cuttings: { asks: ["keep-dry"], never: ["water"], dryAtLeast: 3 } },
  },
  {
    situation: "a bare-root desert rose, soaked by a shower three days after potting",
    why: "the wait begins anew with the wetting",
    sky: { past: { ...WARM }, ahead: [WARM] },
    pots: [
      {
        id: "rose",
        group: "desert-rose",
        plantedDaysAgo: 8,
        roots: "bare-root",
        plantedInto: "dry",
        wateredDaysAgo: [2],
      },
    ],
    expected: { rose: { asks: ["keep-dry"], never: ["water"], dryAtLeast: 5 } },
  },
  {
    situation: "house rule: three dry days after pruning; potted five warm days ago into dry mix",
    why: "the grower's own rule comes before the library's",
    sky: settled(HOT),
    settings: { dryDays: { pruned: 3 } },
    pots: [
      { id: "rose", group: "desert-rose", rimCm: 16, plantedDaysAgo: 5, roots: "pruned", plantedInto: "dry" },
    ],
    expected: { rose: { never: ["keep-dry"] } },
  },
  {
    situation: "a light shower, one chance in two, on a freshly cut plumeria in the open",
    why: "even a little water on fresh cuts is kept off when shelter is a few steps away",
    sky: after(WARM, { ...WARM, rain: { mm: 3, from: 14, hours: 2, chance: 0.5 } }, WARM),
    pots: [
      { id: "plumeria", group: "plumeria-deciduous", plantedDaysAgo: 2, roots: "pruned", plantedInto: "dry" },
    ],
    expected: { plumeria: { asks: ["carry-in"], before: { day: 0, clock: 14 } } },
  },
  {
    situation: "the same shower over a plumeria that was potted two months ago",
    why: "on healed roots it is welcome",
    sky: after(WARM, { ...WARM, rain: { mm: 3, from: 14, hours: 2, chance: 0.5 } }, WARM),
    pots: [{ id: "plumeria", group: "plumeria-deciduous", plantedDaysAgo: 27, wateredDaysAgo: [6] }],
    expected: { plumeria: { never: ["carry-in", "top-cover"] } },
  },
];
