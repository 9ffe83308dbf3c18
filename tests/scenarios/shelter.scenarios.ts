import type { Scenario } from "./scenario.ts";
import { type PotStory, SPOTS } from "./scenario-pots.ts";
import {
  after,
  COLD,
  COLD_WET,
  COOL,
  DOWNPOUR,
  FROST,
  GALE,
  GREY_WET,
  MILD,
  STORM,
  settled,
  WARM,
} from "./skies.ts";

const SHOWERS = { ...WARM, rain: { mm: 10, from: 15, hours: 3 } };
const SOAKING = { ...MILD, cloudFrac: 0.9, rain: { mm: 40, from: 14, hours: 5 } };
const WET_DAYS = { minC: 10, maxC: 15, cloudFrac: 1, rain: { mm: 12, from: 8, hours: 12 } };
const openOnly = SPOTS.filter(({ id }) => id === "bench");
const farShed = SPOTS.map((spot) => (spot.id === "shed" ? { ...spot, carry: "stairs" as const } : spot));

const SQUAT_JADE: PotStory = {
  id: "jade",
  group: "jade",
  rimCm: 30,
  tallCm: 12,
  canopyCm: 28,
  vessel: { heightCm: 16, baseCm: 27 },
  mix: "peaty",
  wateredDaysAgo: [9],
};

/** Under cover and out again: cold, wet, wind. Common practice throughout. */
export const SHELTER: readonly Scenario[] = [
  {
    situation: "first frost tonight, a desert rose on the bench",
    why: "frost kills it; in by the evening",
    season: "autumn",
    sky: after(COOL, FROST, FROST, COOL),
    pots: [{ id: "rose", group: "desert-rose", wateredDaysAgo: [20] }],
    expected: { rose: { asks: ["carry-in"], reason: "cold-night", before: { day: 0, clock: 20 } } },
  },
  {
    situation: "the same frost, an agave that stands five degrees of it, dry",
    why: "it takes a touch of frost when dry; leave it",
    season: "autumn",
    sky: after(COOL, COOL, { minC: 3.5, maxC: 9, cloudFrac: 0.9 }, COOL),
    pots: [{ id: "agave", group: "agave", wateredDaysAgo: [25] }],
    expected: { agave: { never: ["carry-in"] } },
  },
  {
    situation: "frost on the fourth night only, a pelargonium",
    why: "it need not go in before the day of the frost",
    season: "autumn",
    sky: after(COOL, COOL, COOL, COOL, COOL, { minC: -3, maxC: 7, cloudFrac: 0, windMPerS: 0.8 }, COOL),
    pots: [{ id: "pelargonium", group: "pelargonium", wateredDaysAgo: [3] }],
    expected: { pelargonium: { asks: ["carry-in", "carry-out"], first: "none" } },
  },
  {
    situation: "an olive and a night of one degree",
    why: "an olive does not mind",
    season: "winter",
    sky: after(COOL, { minC: 1, maxC: 9, cloudFrac: 0.1 }),
    pots: [{ id: "olive", group: "olive", wateredDaysAgo: [6] }],
    expected: { olive: { never: ["carry-in", "top-cover"] } },
  },
  {
    situation: "a week of grey rain over cacti in the open, nights of five degrees",
    why: "wet and cold for a week rots them: one carry in, and out when it clears",
    season: "autumn",
    sky: after(COOL, COLD_WET, COLD_WET, COLD_WET, COLD_WET, COLD_WET, MILD),
    pots: [{ id: "cactus", group: "cactus-desert", rimCm: 14, wateredDaysAgo: [25] }],
    expected: { cactus: { first: "carry-in", before: { day: 0, clock: 9 } } },
  },
  {
    situation: "one summer downpour on a full sun-baked cactus",
    why: "a few hours of wet in warmth harm nothing",
    sky: after(WARM, DOWNPOUR, WARM),
    pots: [{ id: "cactus", group: "cactus-desert", rimCm: 14, wateredDaysAgo: [12] }],
    expected: { cactus: { never: ["carry-in", "tilt", "top-cover"] } },
  },
  {
    situation: "three warm afternoons of rain on a leafy hibiscus",
    why: "leafy plants in growth drink it away",
    sky: after(WARM, SHOWERS, SHOWERS, SHOWERS, WARM),
    pots: [{ id: "hibiscus", group: "hibiscus", wateredDaysAgo: [1] }],
    expected: { hibiscus: { never: ["carry-in", "top-cover"] } },
  },
  {
    situation: "a gale, a tall bougainvillea in a light pot",
    why: "it would go over: in, or tied down, before the wind",
    sky: after(MILD, MILD, GALE, MILD),
    pots: [{ id: "vine", group: "bougainvillea", rimCm: 22, tallCm: 120, canopyCm: 60, wateredDaysAgo: [2] }],
    expected: { vine: { asks: ["carry-in"], reason: "gusts" } },
  },
  {
    situation: "the same gale with nowhere to carry it",
    why: "brace it or lay it down",
    sky: after(MILD, MILD, GALE, MILD),
    spots: openOnly,
    pots: [{ id: "vine", group: "bougainvillea", rimCm: 22, tallCm: 120, canopyCm: 60, wateredDaysAgo: [2] }],
    expected: { vine: { asks: ["brace"], never: ["carry-in"], reason: "gusts" } },
  },
  {
    situation: "the same gale, a low heavy bowl of stonecrops",
    why: "no wind of a garden moves it",
    sky: after(MILD, MILD, GALE, MILD),
    pots: [
      {
        id: "bowl",
        group: "other-succulent",
        rimCm: 40,
        tallCm: 8,
        canopyCm: 38,
        vessel: { heightCm: 18, material: "glazed" },
        wateredDaysAgo: [4],
      },
    ],
    expected: { bowl: { never: ["carry-in", "brace"] } },
  },
  {
    situation: "a thunderstorm from three in the afternoon, fresh cuttings in the open",
    why: "in before the first thunder hour, not in it",
    sky: after(WARM, STORM, WARM),
    pots: [
      { id: "cuttings", group: "jade", rimCm: 10, plantedDaysAgo: 2, roots: "cutting", plantedInto: "dry" },
    ],
    expected: { cuttings: { asks: ["carry-in"], before: { day: 0, clock: 15 } } },
  },
  {
    situation: "thunder from two to four this afternoon, frost tonight, a pelargonium on the bench",
    why: "there is time in the morning; nobody is sent out between thunder and dusk",
    season: "autumn",
    sky: after(COOL, { ...FROST, thunder: [14, 15, 16] }, FROST, COOL),
    pots: [{ id: "pelargonium", group: "pelargonium", wateredDaysAgo: [2] }],
    expected: { pelargonium: { asks: ["carry-in"], before: { day: 0, clock: 14 } } },
  },
  {
    situation: "thunder at seven this morning, frost tonight, the same pelargonium",
    why: "the long dry afternoon is for carrying",
    season: "autumn",
    sky: after(COOL, { ...FROST, thunder: [7] }, FROST, COOL),
    pots: [{ id: "pelargonium", group: "pelargonium", wateredDaysAgo: [2] }],
    expected: {
      pelargonium: { asks: ["carry-in"], between: { action: "carry-in", day: 0, clocks: [10, 20] } },
    },
  },
  {
    situation: "carried into the shed last week for a cold spell that is over, mild days ahead",
    why: "the danger is past and the shed is dark: out again",
    season: "spring",
    sky: after(COLD, MILD),
    pots: [
      {
        id: "rose",
        group: "desert-rose",
        also: [{ daysAgo: 5, body: { kind: "moved", toSpotId: "shed" } }],
        plantedInto: "dry",
      },
    ],
    expected: { rose: { asks: ["carry-out"], to: "bench" } },
  },
  {
    situation: "the last frost is this very morning, a pelargonium in the shed, mild days from noon on",
    why: "out again, but not at six into the frost that is still there",
    season: "spring",
    sky: after(COLD, { minC: -3, maxC: 17, cloudFrac: 0, windMPerS: 0.8 }, MILD),
    pots: [
      {
        id: "pelargonium",
        group: "pelargonium",
        also: [{ daysAgo: 3, body: { kind: "moved", toSpotId: "shed" } }],
        wateredDaysAgo: [4],
      },
    ],
    expected: { pelargonium: { asks: ["carry-out"], notBefore: { day: 0, clock: 8 } } },
  },
  {
    situation: "carried in for a cold spell that is over, but frost again in three days",
    why: "one carry in and one out: it stays where it is",
    season: "spring",
    sky: after(COLD, MILD, MILD, FROST, FROST, COOL),
    pots: [
      {
        id: "rose",
        group: "desert-rose",
        also: [{ daysAgo: 5, body: { kind: "moved", toSpotId: "shed" } }],
        wateredDaysAgo: [9],
      },
    ],
    expected: { rose: { first: "none" } },
  },
  {
    situation: "a desert rose back from three dark weeks in the shed into the sun",
    why: "leaves that are no longer used to sun are shaded at first",
    season: "spring",
    sky: settled({ minC: 15, maxC: 26, cloudFrac: 0.1 }),
    pots: [
      {
        id: "rose",
        group: "desert-rose",
        also: [{ daysAgo: 21, body: { kind: "moved", toSpotId: "shed" } }],
        wateredDaysAgo: [5],
      },
    ],
    expected: {
      rose: {
        asks: ["carry-out", "shade"],
        reason: "sun-by-steps",
        // It may be carried at dusk, so the cloth must hang before the sun of the next morning is strong.
        between: { action: "shade", day: 1, clocks: [7, 10] },
      },
    },
  },
  {
    situation: "a big lemon too heavy for two, and only a shed up a stair",
    why: "nobody is asked to carry it; it is covered instead",
    season: "winter",
    sky: after(COOL, { minC: -7, maxC: 3, cloudFrac: 0, windMPerS: 0.8 }),
    spots: farShed.filter(({ id }) => id === "bench" || id === "shed"),
    pots: [
      {
        id: "lemon",
        group: "citrus",
        rimCm: 55,
        tallCm: 120,
        canopyCm: 100,
        vessel: { material: "unglazed" },
        wateredDaysAgo: [3],
      },
    ],
    expected: { lemon: { asks: ["top-cover"], never: ["carry-in"], notCarried: "too-heavy" } },
  },
  {
    situation: "small cacti three weeks in the shed, one dry day, then three wet days",
    why: "out this evening and in again tomorrow is a carry for nothing: they stay until it clears",
    season: "spring",
    sky: after(COLD, MILD, SOAKING, WET_DAYS, WET_DAYS, MILD),
    pots: [
      {
        id: "cacti",
        group: "cactus-desert",
        rimCm: 13,
        plantedInto: "dry",
        also: [{ daysAgo: 15, body: { kind: "moved", toSpotId: "shed" } }],
      },
    ],
    expected: { cacti: { first: "none", asks: ["carry-out"], never: ["carry-in"] } },
  },
  {
    situation: "ten degrees of frost night after night, a tub of frangipani, a wall a degree or two milder",
    why: "it would freeze there as well: nobody hauls it for a degree; wrap it, or find it a room",
    season: "winter",
    sky: after(COOL, { minC: -10, maxC: 1, cloudFrac: 0, windMPerS: 0.8 }),
    spots: SPOTS.filter(({ id }) => id === "bench" || id === "wall"),
    pots: [
      {
        id: "plumeria",
        group: "plumeria-deciduous",
        rimCm: 45,
        tallCm: 150,
        canopyCm: 90,
        wateredDaysAgo: [20],
      },
    ],
    expected: { plumeria: { asks: ["top-cover"], never: ["carry-in"], reason: "cold-night" } },
  },
  {
    situation: "frost tonight over two pelargoniums, and one place in the shed",
    why: "the lighter goes in; the other is told that no place is left, and is wrapped",
    season: "autumn",
    sky: after(COOL, FROST, FROST, COOL),
    spots: SPOTS.filter(({ id }) => id === "bench" || id === "shed").map((spot) =>
      spot.id === "shed" ? { ...spot, room: { places: 1 } } : spot,
    ),
    pots: [
      { id: "small", group: "pelargonium", rimCm: 14, wateredDaysAgo: [3] },
      { id: "big", group: "pelargonium", rimCm: 24, wateredDaysAgo: [3] },
    ],
    expected: {
      small: { asks: ["carry-in"] },
      big: { never: ["carry-in"], asks: ["top-cover"], notCarried: "no-room" },
    },
  },
  {
    situation: "a fig bonsai and nights of six degrees for a week, a warm sill indoors",
    why: "below its line of damage it goes where it is warm",
    season: "autumn",
    sky: after(COOL, { minC: 5, maxC: 13, cloudFrac: 0.1 }),
    pots: [
      { id: "fig", group: "fig-bonsai", vessel: { topCm: 30, baseCm: 26, heightCm: 8 }, wateredDaysAgo: [2] },
    ],
    expected: { fig: { asks: ["carry-in"], to: "sill" } },
  },
  {
    situation: "a warm-country cactus, nights of eight degrees and dry",
    why: "melon cacti are hurt below ten, dry or not",
    season: "autumn",
    sky: after(MILD, { minC: 7, maxC: 15, cloudFrac: 0.1 }),
    pots: [{ id: "melon", group: "cactus-warm", rimCm: 13, wateredDaysAgo: [15] }],
    expected: { melon: { asks: ["carry-in"], reason: "cold-night" } },
  },
  {
    situation: "the same nights, a hardy desert cactus, dry",
    why: "dry, it takes them; leave it",
    season: "autumn",
    sky: after(MILD, { minC: 11, maxC: 19, cloudFrac: 0.5 }),
    pots: [{ id: "cactus", group: "cactus-desert", rimCm: 13, wateredDaysAgo: [27] }],
    expected: { cactus: { never: ["carry-in"] } },
  },
  {
    situation: "rain forecast with one chance in twenty over dry resting cacti",
    why: "not worth a carry",
    season: "autumn",
    sky: after(WARM, { ...WARM, rain: { mm: 3, from: 12, hours: 2, chance: 0.05 } }, WARM),
    pots: [{ id: "cactus", group: "cactus-desert", rimCm: 16, wateredDaysAgo: [25] }],
    expected: { cactus: { never: ["carry-in", "tilt", "top-cover"] } },
  },
  {
    situation: "rain drives under a deep eave only with wind; a calm wet week, a pachypodium there",
    why: "under the eave it stays dry without wind",
    sky: after(WARM, { ...GREY_WET, windMPerS: 0.5, minC: 15, maxC: 20 }),
    pots: [{ id: "pachypodium", group: "pachypodium-summer", at: "eave", rimCm: 16, wateredDaysAgo: [12] }],
    expected: { pachypodium: { never: ["carry-in"] } },
  },
  {
    situation: "cold wet week, a jade with no place to go",
    why: "tilt it or cover the mix where it stands",
    season: "autumn",
    sky: after(COOL, COLD_WET),
    spots: openOnly,
    pots: [{ id: "jade", group: "jade", rimCm: 16, mix: "peaty", wateredDaysAgo: [16] }],
    expected: { jade: { never: ["water", "carry-in"] } },
  },
  {
    situation:
      "a citrus in a shallow bowl of peat, watered yesterday after days of rain, cool grey and dry days ahead",
    why: "a flat base holds water; leaning, it drains: no cover helps against what is in it already",
    season: "autumn",
    sky: {
      past: { ...COOL, cloudFrac: 1, rain: { mm: 9, from: 8, hours: 10 } },
      ahead: [{ ...COOL, cloudFrac: 1 }],
    },
    spots: openOnly,
    pots: [
      {
        id: "lemon",
        group: "citrus",
        rimCm: 26,
        vessel: { heightCm: 14, baseCm: 24 },
        mix: "peaty",
        wateredDaysAgo: [1],
      },
    ],
    expected: {
      lemon: { asks: ["tilt"], never: ["top-cover", "water", "carry-in"], reason: "base-without-air" },
    },
  },
  {
    situation: "a squat jade in peat, cold wet days with a gale, no place to go",
    why: "no sheet stays on in that wind, but a low heavy pot can lean",
    season: "autumn",
    sky: after(COOL, { ...COLD_WET, windMPerS: 10, gustMPerS: 20 }),
    spots: openOnly,
    pots: [SQUAT_JADE],
    expected: { jade: { asks: ["tilt"], never: ["top-cover", "water"] } },
  },
  {
    situation: "the same jade and rain without the wind",
    why: "a cover keeps off more of the rain than leaning does",
    season: "autumn",
    sky: after(COOL, { ...COLD_WET, windMPerS: 1 }),
    spots: openOnly,
    pots: [SQUAT_JADE],
    expected: { jade: { asks: ["top-cover"], never: ["tilt", "water"] } },
  },
  {
    situation: "a desert rose in leaf that belongs in a dim shed, mild autumn days, a bright sill indoors",
    why: "it is not rain that speaks for the sill but light",
    season: "autumn",
    sky: settled(MILD),
    pots: [{ id: "rose", group: "desert-rose", at: "shed", rimCm: 18, wateredDaysAgo: [15] }],
    expected: { rose: { asks: ["carry-in"], to: "sill", reason: "too-dim" } },
  },
];
