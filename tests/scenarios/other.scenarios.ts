import type { Scenario } from "./scenario.ts";
import { SPOTS } from "./scenario-pots.ts";
import { after, COLD, COOL, FROST, HOT, MILD, SCORCHING, STORM, settled, WARM } from "./skies.ts";

const onePlace = SPOTS.filter(({ id }) => id === "bench" || id === "shed").map((spot) =>
  spot.id === "shed" ? { ...spot, room: { places: 1 } } : spot,
);
const lowShed = SPOTS.filter(({ id }) => id === "bench" || id === "shed").map((spot) =>
  spot.id === "shed" ? { ...spot, room: { maxHeightCm: 60 } } : spot,
);

/** Room, heat, saucers, trouble, quiet weeks. Common practice throughout. */
export const OTHER: readonly Scenario[] = [
  {
    situation: "one place in the shed, frost tonight, a desert rose and a pelargonium",
    why: "the place goes to the one that the frost kills; the other is covered",
    season: "autumn",
    sky: after(COOL, COOL, { minC: -1, maxC: 8, cloudFrac: 0, windMPerS: 0.8 }, COOL),
    spots: onePlace,
    pots: [
      { id: "rose", group: "desert-rose", wateredDaysAgo: [20] },
      { id: "pelargonium", group: "pelargonium", wateredDaysAgo: [3] },
    ],
    expected: { rose: { asks: ["carry-in"] }, pelargonium: { never: ["carry-in"], asks: ["top-cover"] } },
  },
  {
    situation: "a storm, one place: a pot with fresh cuts and one long settled",
    why: "ahead of heavy rain the newly potted goes in first",
    sky: after(WARM, STORM, WARM),
    spots: onePlace,
    pots: [
      { id: "fresh", group: "desert-rose", plantedDaysAgo: 2, roots: "pruned", plantedInto: "dry" },
      { id: "old", group: "desert-rose", wateredDaysAgo: [7] },
    ],
    expected: { fresh: { asks: ["carry-in"] }, old: { never: ["carry-in"] } },
  },
  {
    situation: "frost and a shed too low for a tall frangipani",
    why: "what does not fit is not sent there",
    season: "autumn",
    sky: after(COOL, FROST, COOL),
    spots: lowShed,
    pots: [
      { id: "tall", group: "plumeria-deciduous", rimCm: 30, tallCm: 130, wateredDaysAgo: [15] },
      { id: "low", group: "plumeria-deciduous", rimCm: 18, tallCm: 30, wateredDaysAgo: [15] },
    ],
    expected: { tall: { never: ["carry-in"], asks: ["top-cover"] }, low: { asks: ["carry-in"] } },
  },
  {
    situation: "forty-four degrees and a fig in full sun with nowhere to go",
    why: "shade it through the hot hours",
    sky: after(HOT, SCORCHING, SCORCHING, HOT),
    spots: SPOTS.filter(({ id }) => id === "bench"),
    pots: [{ id: "fig", group: "fig-bonsai", rimCm: 26, wateredDaysAgo: [1] }],
    expected: { fig: { asks: ["shade"], reason: "heat-and-sun" } },
  },
  {
    situation: "the same heat, a desert rose",
    why: "it stands heat that scorches others",
    sky: after(HOT, { minC: 23, maxC: 39, cloudFrac: 0 }, HOT),
    pots: [{ id: "rose", group: "desert-rose", wateredDaysAgo: [2] }],
    expected: { rose: { never: ["shade", "carry-in"] } },
  },
  {
    situation: "a mild settled week, six pots watered of late",
    why: "a pot that needs nothing gets nothing",
    sky: settled(MILD),
    pots: [
      { id: "lemon", group: "citrus", rimCm: 34, canopyCm: 40, wateredDaysAgo: [1] },
      { id: "olive", group: "olive", rimCm: 34, wateredDaysAgo: [2] },
      { id: "jade", group: "jade", wateredDaysAgo: [3] },
      { id: "cactus", group: "cactus-desert", wateredDaysAgo: [2] },
      { id: "aloe", group: "aloe-summer", wateredDaysAgo: [2] },
      { id: "agave", group: "agave", rimCm: 30, wateredDaysAgo: [2] },
    ],
    expected: {
      lemon: { first: "none" },
      olive: { first: "none" },
      jade: { first: "none" },
      cactus: { first: "none" },
      aloe: { first: "none" },
      agave: { first: "none" },
    },
  },
  {
    situation: "a wilting lemon whose mix is full of water",
    why: "wilting in wet mix is a root trouble: look at the roots, do not water",
    sky: settled(MILD),
    pots: [
      {
        id: "lemon",
        group: "citrus",
        rimCm: 30,
        wateredDaysAgo: [2, 1],
        also: [{ daysAgo: 1, body: { kind: "trouble", sign: "wilting" } }],
      },
    ],
    expected: { lemon: { asks: ["look-at-roots"], never: ["water"] } },
  },
  {
    situation: "a wilting pelargonium, dry for a week in heat",
    why: "it is thirsty: water, and no digging",
    sky: settled(HOT),
    pots: [
      {
        id: "pelargonium",
        group: "pelargonium",
        rimCm: 18,
        wateredDaysAgo: [8],
        also: [{ daysAgo: 1, body: { kind: "trouble", sign: "wilting" } }],
      },
    ],
    expected: { pelargonium: { first: "water", never: ["look-at-roots"] } },
  },
  {
    situation: "a soft stem on a desert rose, wet in cold nights",
    why: "soft, wet and cold is rot until proved otherwise",
    season: "autumn",
    sky: settled(COLD),
    pots: [
      {
        id: "rose",
        group: "desert-rose",
        at: "eave",
        wateredDaysAgo: [3],
        also: [{ daysAgo: 1, body: { kind: "trouble", sign: "soft-stem" } }],
      },
    ],
    expected: { rose: { asks: ["look-at-roots"], never: ["water"] } },
  },
  {
    situation: "leaves dropped by a frangipani as the nights turn cool",
    why: "it is going to rest; nothing is to be done",
    season: "autumn",
    sky: settled({ minC: 7, maxC: 15, cloudFrac: 0.3 }),
    pots: [
      {
        id: "frangipani",
        group: "plumeria-deciduous",
        at: "shed",
        wateredDaysAgo: [24],
        also: [
          { daysAgo: 4, body: { kind: "leaf", state: "leafless" } },
          { daysAgo: 2, body: { kind: "trouble", sign: "dropped-leaves" } },
        ],
      },
    ],
    expected: { frangipani: { never: ["water", "look-at-roots"] } },
  },
  {
    situation: "the saucer of a resting pachypodium still full after a watering in the cool",
    why: "standing water keeps the base without air: empty it",
    season: "winter",
    sky: settled({ minC: 9, maxC: 14, cloudFrac: 0.8 }),
    pots: [
      {
        id: "pachypodium",
        group: "pachypodium-summer",
        at: "shed",
        rimCm: 20,
        mix: "peaty",
        vessel: { saucerCm: 3 },
        wateredDaysAgo: [1],
      },
    ],
    expected: { pachypodium: { asks: ["empty-saucer"] } },
  },
  {
    situation: "a pot moved to the sill for the winter, frost outside for the whole week",
    why: "it stays in",
    season: "winter",
    sky: settled(FROST),
    pots: [
      {
        id: "rose",
        group: "desert-rose",
        also: [{ daysAgo: 20, body: { kind: "moved", toSpotId: "sill" } }],
      },
    ],
    expected: { rose: { never: ["carry-out"] } },
  },
  {
    situation: "a house plant that has always stood on the sill, a fine warm week",
    why: "what belongs indoors is not asked out",
    sky: settled(WARM),
    pots: [{ id: "fig", group: "fig-bonsai", at: "sill", wateredDaysAgo: [2] }],
    expected: { fig: { never: ["carry-out"] } },
  },
  {
    situation: "southern winter: a resting cactus in July at 35 degrees south, cool and dry",
    why: "rest follows the season of the hemisphere",
    latDeg: -35,
    sky: settled({ minC: 6, maxC: 14, cloudFrac: 0.3 }),
    pots: [{ id: "cactus", group: "cactus-desert", at: "shed", rimCm: 14 }],
    expected: { cactus: { never: ["water"] } },
  },
  {
    situation: "trips before work limited to one, a storm in the afternoon, two pots with fresh cuts",
    why: "the one carry goes where it saves most",
    sky: after(WARM, STORM, WARM),
    settings: { tripsBeforeWork: 1 },
    pots: [
      { id: "fresh", group: "desert-rose", plantedDaysAgo: 1, roots: "pruned", plantedInto: "dry" },
      { id: "older", group: "desert-rose", plantedDaysAgo: 6, roots: "pruned", plantedInto: "dry" },
    ],
    expected: { fresh: { asks: ["carry-in"] }, older: { never: ["carry-in"] } },
  },
  {
    situation: "evening, nine o'clock, frost before dawn, a pelargonium outside",
    why: "nothing is asked for after the working hours; the next day's work begins at six",
    season: "autumn",
    clock: 21,
    sky: after(COOL, COOL, COOL),
    pots: [{ id: "pelargonium", group: "pelargonium", wateredDaysAgo: [2] }],
    expected: { pelargonium: { first: "none" } },
  },
];
