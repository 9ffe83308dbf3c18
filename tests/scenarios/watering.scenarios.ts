import type { Scenario } from "./scenario.ts";
import { after, COLD, COLD_WET, COOL, HOT, MILD, STORM, settled, WARM } from "./skies.ts";

const drizzle = { ...WARM, rain: { mm: 1, from: 10, hours: 2 } };
const soaking = (from: number) => ({ ...WARM, cloudFrac: 0.9, rain: { mm: 30, from, hours: 4 } });

/** The can: when, and when not. Common practice throughout. */
export const WATERING: readonly Scenario[] = [
  {
    situation: "a lemon in leaf, hot and dry, last watered five days ago",
    why: "a thirsty leafy plant at its refill point with no rain in sight is watered this morning",
    sky: settled(HOT),
    pots: [{ id: "lemon", group: "citrus", rimCm: 30, wateredDaysAgo: [8, 5] }],
    expected: { lemon: { first: "water" } },
  },
  {
    situation: "the same lemon, watered yesterday in mild weather",
    why: "it has enough for days; leave it alone",
    sky: settled(MILD),
    pots: [{ id: "lemon", group: "citrus", rimCm: 30, wateredDaysAgo: [4, 1] }],
    expected: { lemon: { first: "none" } },
  },
  {
    situation: "a hibiscus in a small pot in a heat wave, watered yesterday morning",
    why: "in heat a small pot of a thirsty plant wants water daily",
    sky: settled(HOT),
    pots: [{ id: "hibiscus", group: "hibiscus", rimCm: 18, canopyCm: 35, wateredDaysAgo: [3, 2, 1] }],
    expected: { hibiscus: { first: "water" } },
  },
  {
    situation: "a pelargonium nearly at its refill point, soaking rain from nine this morning",
    why: "rain that reaches it within hours does the work",
    sky: after(WARM, soaking(9), WARM),
    pots: [{ id: "pelargonium", group: "pelargonium", rimCm: 20, wateredDaysAgo: [3] }],
    expected: { pelargonium: { never: ["water"] } },
  },
  {
    situation: "the same pelargonium under a shed roof, the same rain",
    why: "rain does not reach it there",
    sky: after(WARM, soaking(9), WARM),
    pots: [{ id: "pelargonium", group: "pelargonium", rimCm: 20, at: "sill", wateredDaysAgo: [12] }],
    expected: { pelargonium: { first: "water" } },
  },
  {
    situation: "a thirsty pelargonium and a millimetre of drizzle on the way",
    why: "a drizzle wets the leaves, not the pot",
    sky: after(WARM, drizzle),
    pots: [{ id: "pelargonium", group: "pelargonium", rimCm: 20, wateredDaysAgo: [8] }],
    expected: { pelargonium: { first: "water" } },
  },
  {
    situation: "a fig in a shallow tray at its refill point in heat, storm only tomorrow afternoon",
    why: "it would suffer a hot day and a half before the rain comes",
    sky: after(HOT, HOT, STORM, WARM),
    pots: [
      {
        id: "fig",
        group: "fig-bonsai",
        vessel: { topCm: 32, baseCm: 28, heightCm: 8 },
        mix: "gritty",
        wateredDaysAgo: [3, 2],
      },
    ],
    expected: { fig: { asks: ["water"] } },
  },
  {
    situation: "a desert cactus in full summer growth, six weeks without a drop",
    why: "in growth and warmth even a cactus is watered once the mix is dry",
    sky: settled(HOT),
    pots: [{ id: "cactus", group: "cactus-desert", rimCm: 12, plantedDaysAgo: 27 }],
    expected: { cactus: { first: "water" } },
  },
  {
    situation: "the same cactus two days after a soaking",
    why: "dry between waterings is what it wants",
    sky: settled(WARM),
    pots: [{ id: "cactus", group: "cactus-desert", rimCm: 18, wateredDaysAgo: [2] }],
    expected: { cactus: { never: ["water"] } },
  },
  {
    situation: "a cactus in its winter rest indoors, dry for weeks, nights of ten degrees",
    why: "a resting cactus gets no water, however dry",
    season: "winter",
    sky: settled(COOL),
    pots: [{ id: "cactus", group: "cactus-desert", at: "shed", rimCm: 14 }],
    expected: { cactus: { never: ["water", "soak-slowly"] } },
  },
  {
    situation: "a winter-growing aloe in a mild winter, dry for four weeks",
    why: "a plant that grows in the cool season is watered in it",
    season: "winter",
    sky: settled({ minC: 9, maxC: 18, cloudFrac: 0.2 }),
    pots: [{ id: "aloe", group: "aloe-winter", rimCm: 14 }],
    expected: { aloe: { first: "water" } },
  },
  {
    situation: "a dry desert rose in warm days, a cold week from tomorrow",
    why: "ahead of a cold spell it is kept dry; wet and cold is how it rots",
    season: "autumn",
    sky: after({ minC: 13, maxC: 22 }, { minC: 12, maxC: 20 }, COLD),
    pots: [{ id: "rose", group: "desert-rose", rimCm: 22, at: "shed", wateredDaysAgo: [20] }],
    expected: { rose: { never: ["water"] } },
  },
  {
    situation: "the same dry desert rose with warm nights for weeks",
    why: "in warmth and leaf it is a thirsty tropical",
    sky: settled(HOT),
    pots: [{ id: "rose", group: "desert-rose", rimCm: 18, canopyCm: 35, wateredDaysAgo: [20] }],
    expected: { rose: { first: "water" } },
  },
  {
    situation: "a citrus at its refill point in a cool week of nights at eight degrees",
    why: "an evergreen leafy plant is never left fully dry, even in the cool",
    season: "winter",
    sky: settled({ minC: 8, maxC: 16, cloudFrac: 0.2 }),
    pots: [
      { id: "citrus", group: "citrus", rimCm: 24, canopyCm: 50, plantedDaysAgo: 27, wateredDaysAgo: [26] },
    ],
    expected: { citrus: { first: "water" } },
  },
  {
    situation: "an olive watered two days ago in mild weather",
    why: "olives dry half down between waterings; it has time",
    sky: settled(MILD),
    pots: [{ id: "olive", group: "olive", rimCm: 36, wateredDaysAgo: [2] }],
    expected: { olive: { first: "none" } },
  },
  {
    situation: "peat that has dried out hard around a pelargonium",
    why: "dry peat sheds water: soak slowly instead of pouring",
    sky: settled(HOT),
    pots: [
      {
        id: "pelargonium",
        group: "pelargonium",
        rimCm: 16,
        canopyCm: 36,
        mix: "peaty",
        wateredDaysAgo: [16],
      },
    ],
    expected: { pelargonium: { first: "soak-slowly", reason: "sheds-water" } },
  },
  {
    situation: "a thunderstorm overhead from six to nine, a dry hibiscus",
    why: "nobody waters outdoors under thunder; it waits until half an hour after",
    sky: after(HOT, { ...HOT, thunder: [6, 7, 8] }, HOT),
    pots: [{ id: "hibiscus", group: "hibiscus", rimCm: 20, wateredDaysAgo: [3] }],
    expected: { hibiscus: { asks: ["water"] } },
  },
  {
    situation: "forty seedling pots alike, dry",
    why: "a tray kept as one entry is watered as one",
    sky: settled(WARM),
    pots: [
      {
        id: "tray",
        group: "other-leafy",
        rimCm: 9,
        canopyCm: 10,
        tallCm: 10,
        count: 40,
        wateredDaysAgo: [4],
      },
    ],
    expected: { tray: { first: "water" } },
  },
  {
    situation: "an epiphytic cactus on the sill, watered four days ago",
    why: "it is kept just moist, and is so",
    sky: settled(MILD),
    pots: [{ id: "leaf-cactus", group: "cactus-epiphytic", at: "sill", rimCm: 16, wateredDaysAgo: [4] }],
    expected: { "leaf-cactus": { first: "none" } },
  },
  {
    situation: "a leafless frangipani in a cool winter shed, bone dry",
    why: "leafless and cool means no water",
    season: "winter",
    sky: settled(COOL),
    pots: [
      {
        id: "frangipani",
        group: "plumeria-deciduous",
        at: "shed",
        rimCm: 26,
        also: [{ daysAgo: 20, body: { kind: "leaf", state: "leafless" } }],
      },
    ],
    expected: { frangipani: { never: ["water"] } },
  },
  {
    situation: "the same frangipani in spring, new growth seen, warm nights",
    why: "growth and warm nights are the sign to begin watering",
    season: "spring",
    sky: settled({ minC: 16, maxC: 27, cloudFrac: 0.2 }),
    pots: [
      {
        id: "frangipani",
        group: "plumeria-deciduous",
        rimCm: 26,
        also: [{ daysAgo: 3, body: { kind: "leaf", state: "new-growth" } }],
      },
    ],
    expected: { frangipani: { asks: ["water"] } },
  },
  {
    situation: "a wet cold week over a jade in the open, still damp",
    why: "it asks for shelter from the wet cold, never for more water",
    season: "autumn",
    sky: after(COOL, COLD_WET),
    pots: [{ id: "jade", group: "jade", rimCm: 18, wateredDaysAgo: [5] }],
    expected: { jade: { never: ["water"] } },
  },
  {
    situation: "an olive thought dry for days, but yesterday it weighed more than it can hold drained",
    why: "water cannot get out: clear the hole, and no can on top of it",
    sky: settled(WARM),
    pots: [
      {
        id: "olive",
        group: "olive",
        wateredDaysAgo: [12],
        also: [{ daysAgo: 1, body: { kind: "weighed", massKg: 4.3 } }],
      },
    ],
    expected: { olive: { asks: ["clear-hole"], never: ["water", "soak-slowly"], reason: "stays-wet" } },
  },
  {
    situation: "the same olive, found heavy in the hand yesterday, nothing noted since",
    why: "somebody may have watered it: it is felt again before the can is fetched",
    sky: settled(WARM),
    pots: [
      {
        id: "olive",
        group: "olive",
        wateredDaysAgo: [12],
        also: [{ daysAgo: 1, body: { kind: "checked", feel: "heavy" } }],
      },
    ],
    expected: { olive: { first: "none", never: ["water"], reason: "found-wetter" } },
  },
  {
    situation: "the same olive, found heavy four days ago",
    why: "that look is too old to hold back the can",
    sky: settled(WARM),
    pots: [
      {
        id: "olive",
        group: "olive",
        wateredDaysAgo: [12],
        also: [{ daysAgo: 4, body: { kind: "checked", feel: "heavy" } }],
      },
    ],
    expected: { olive: { first: "water" } },
  },
  {
    situation: "a hibiscus and a lemon in mild spring days, no watering noted for a month",
    why: "bone dry by all that was noted, and nobody said that they died: water them first of all",
    season: "spring",
    sky: settled(WARM),
    pots: [
      { id: "hibiscus", group: "hibiscus", wateredDaysAgo: [26] },
      { id: "lemon", group: "citrus", wateredDaysAgo: [26] },
    ],
    expected: { hibiscus: { first: "water" }, lemon: { first: "water" } },
  },
];
