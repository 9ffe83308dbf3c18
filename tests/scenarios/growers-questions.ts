import type { AskedHouse, askedHouse } from "./asked-house.ts";
import { SPOTS } from "./scenario-pots.ts";
import { after, COLD_WET, COOL, GREY_WET, HOT, MILD, STORM, settled, WARM } from "./skies.ts";

/** A question that growers ask, where it is answered, and what a right answer says. */
export interface Question {
  readonly asked: string;
  readonly where: "brief" | "pot page" | "what-if page" | "spots page" | "mix bench";
  readonly morning: Parameters<typeof askedHouse>[0];
  readonly answer: (house: AskedHouse) => Promise<string> | string;
  /** All of them are said. Rules of the trade, common practice. */
  readonly says: readonly (string | RegExp)[];
  readonly saysNot?: readonly (string | RegExp)[];
}

const brief = ({ brief }: AskedHouse) => brief;
const page = (address: string) => (house: AskedHouse) => house.page(address);
const noted = (
  sign: "wilting" | "soft-stem" | "wrinkled" | "yellow-leaves" | "water-runs-through" | "other",
) => [{ daysAgo: 1, body: { kind: "trouble", sign } as const }];
const dim = SPOTS.map((spot) => (spot.id === "sill" ? { ...spot, sunFrac: 0.2 } : spot));

/** The questions that growers of potted plants ask most, each put to a house whose answer is known. */
export const QUESTIONS: readonly Question[] = [
  {
    asked: "How often does this plant in this pot want water?",
    where: "pot page",
    morning: {
      clock: 8,
      sky: settled(HOT),
      pots: [{ id: "pot", group: "hibiscus", rimCm: 20, canopyCm: 36, wateredDaysAgo: [2, 0] }],
    },
    answer: page("/pots/pot"),
    says: [/comes down to its refill point (within a day|in (a day|[1-3] days))/],
    saysNot: [/Water ,/],
  },
  {
    asked: "I have just repotted: do I water now or wait, and how long?",
    where: "brief",
    morning: {
      sky: settled(WARM),
      pots: [
        { id: "Lemon", group: "citrus", plantedDaysAgo: 1, roots: "teased" },
        { id: "Rose", group: "desert-rose", plantedDaysAgo: 1, roots: "pruned", plantedInto: "dry" },
      ],
    },
    answer: brief,
    says: [
      /Water: Lemon,.*A leafy plant is watered in at once/,
      /Rose, until \w+ (19|20|21|22|23) July\. Roots were disturbed/,
    ],
    saysNot: ["Water: Rose"],
  },
  {
    asked: "Roots were cut, or rot was found: how long must it stay dry and out of the rain?",
    where: "brief",
    morning: {
      sky: after(WARM, STORM, WARM),
      pots: [
        { id: "Cactus", group: "cactus-desert", plantedDaysAgo: 2, roots: "rot-surgery", plantedInto: "dry" },
      ],
    },
    answer: brief,
    says: [
      /Carry under cover: Cactus, to \w+, by (0\d|1[0-5]):00/,
      /Cactus, until \w+ (2[4-9]|30|31) July/,
      "cuts close dry",
    ],
  },
  {
    asked: "Rain is forecast: do I still have to water?",
    where: "pot page",
    morning: {
      sky: after(MILD, { ...MILD, cloudFrac: 0.9, rain: { mm: 30, from: 9, hours: 4 } }, MILD),
      pots: [{ id: "pot", group: "olive", rimCm: 24, wateredDaysAgo: [4] }],
    },
    answer: page("/pots/pot"),
    says: ["Leave be", /\d+ mm of rain is on its way and will do the watering/],
  },
  {
    asked: "It rains for days: do the pots have to go under cover?",
    where: "brief",
    morning: {
      season: "autumn",
      sky: after(COOL, COLD_WET, COLD_WET, COLD_WET, MILD),
      pots: [
        { id: "Cactus", group: "cactus-desert", rimCm: 14, wateredDaysAgo: [25] },
        { id: "Olive", group: "olive", rimCm: 34, wateredDaysAgo: [4] },
      ],
    },
    answer: brief,
    says: [/Carry under cover: Cactus/, /Wet (now|from|throughout)/],
    saysNot: ["Cover the mix: Cactus"],
  },
  {
    asked: "How cold may the night get before it has to come in?",
    where: "brief",
    morning: {
      season: "autumn",
      sky: after(MILD, { minC: 6, maxC: 15, cloudFrac: 0.1 }),
      pots: [{ id: "Melon", group: "cactus-warm", rimCm: 13, wateredDaysAgo: [15] }],
    },
    answer: brief,
    says: [/Carry under cover: Melon/, /The night goes down to \d/, "it is hurt below 10 °C"],
  },
  {
    asked: "When may it go out again, and how does it get used to the sun?",
    where: "brief",
    morning: {
      season: "spring",
      sky: settled({ minC: 15, maxC: 26, cloudFrac: 0.1 }),
      pots: [
        {
          id: "Rose",
          group: "desert-rose",
          wateredDaysAgo: [5],
          also: [{ daysAgo: 21, body: { kind: "moved", toSpotId: "shed" } }],
        },
      ],
    },
    answer: brief,
    says: ["Carry back out: Rose", "shade it at first, less by the week"],
  },
  {
    asked: "Leaves turn yellow and fall: too much water, too little, cold, or the season?",
    where: "brief",
    morning: {
      sky: settled(MILD),
      pots: [
        {
          id: "Fig",
          group: "fig-bonsai",
          mix: "peaty",
          wateredDaysAgo: [3, 2, 1],
          also: noted("yellow-leaves"),
        },
      ],
    },
    answer: brief,
    says: [
      "Yellow leaves, noted on Monday 14 July",
      /Likely causes, first the likeliest: roots without air/,
      "no water",
    ],
  },
  {
    asked: "It wilts although the mix is wet: what now?",
    where: "brief",
    morning: {
      sky: settled(MILD),
      pots: [{ id: "Lemon", group: "citrus", rimCm: 30, wateredDaysAgo: [2, 1], also: noted("wilting") }],
    },
    answer: brief,
    says: ["Look at the roots: Lemon", /roots without air in wet mix \(\d\d%\)/, "no water"],
    saysNot: ["Water: Lemon"],
  },
  {
    asked: "It wilts every hot afternoon: water again?",
    where: "brief",
    morning: {
      sky: settled({ minC: 22, maxC: 38, cloudFrac: 0.05 }),
      pots: [
        {
          id: "Hibiscus",
          group: "hibiscus",
          rimCm: 34,
          canopyCm: 40,
          wateredDaysAgo: [1],
          also: noted("wilting"),
        },
      ],
    },
    answer: brief,
    says: ["the heat of the afternoon", /(Look again at dawn|Push a dry stick)/],
  },
  {
    asked: "Does it get any water at all during its winter rest?",
    where: "pot page",
    morning: {
      season: "winter",
      sky: settled(COOL),
      pots: [{ id: "pot", group: "cactus-desert", at: "shed", rimCm: 14 }],
    },
    answer: page("/pots/pot"),
    says: [/(It is resting and drinks very little|wet roots rot below)/, "No feed for now: it rests"],
    saysNot: [/Water,/],
  },
  {
    asked: "When does watering begin again in spring?",
    where: "brief",
    morning: {
      season: "spring",
      sky: settled({ minC: 16, maxC: 27, cloudFrac: 0.2 }),
      pots: [
        {
          id: "Awake",
          group: "plumeria-deciduous",
          rimCm: 26,
          also: [{ daysAgo: 3, body: { kind: "leaf", state: "new-growth" } }],
        },
      ],
    },
    answer: brief,
    says: ["Water: Awake"],
  },
  {
    asked: "The trunk is soft or wrinkled: thirst or rot?",
    where: "brief",
    morning: {
      season: "autumn",
      sky: settled({ minC: 4, maxC: 11, cloudFrac: 0.2 }),
      pots: [
        { id: "Soft", group: "desert-rose", at: "eave", wateredDaysAgo: [3], also: noted("soft-stem") },
        { id: "Dry", group: "desert-rose", at: "sill", rimCm: 14, also: noted("wrinkled") },
      ],
    },
    answer: brief,
    says: [
      /Soft: Soft stem.*?likeliest: rot from wet and cold/,
      /Dry: Wrinkled.*?Likely causes?[^:]*: (thirst|its rest)/,
      "Press the stem low down: firm is sound, soft or wet is rot.",
    ],
  },
  {
    asked: "The top is dry: is it dry further down?",
    where: "pot page",
    morning: {
      sky: settled(WARM),
      pots: [
        {
          id: "pot",
          group: "olive",
          rimCm: 34,
          wateredDaysAgo: [3],
          also: [{ daysAgo: 1, body: { kind: "checked", dryToCm: 3 } }],
        },
      ],
    },
    answer: page("/pots/pot"),
    says: [/Holds about [\d.]+ l now/, /Holds [\d.]+ l after draining/],
  },
  {
    asked: "Water stands in the saucer: does it matter, and how soon must it go?",
    where: "brief",
    morning: {
      season: "winter",
      sky: settled({ minC: 9, maxC: 14, cloudFrac: 0.8 }),
      pots: [
        {
          id: "Club",
          group: "pachypodium-summer",
          at: "shed",
          rimCm: 20,
          mix: "peaty",
          vessel: { saucerCm: 3 },
          wateredDaysAgo: [1],
        },
      ],
    },
    answer: brief,
    says: [/Empty the saucer: Club, by \d\d:00/, "keeps the base without air"],
  },
  {
    asked: "Clay or plastic: how much sooner does it dry?",
    where: "pot page",
    morning: {
      clock: 8,
      sky: settled(HOT),
      pots: [
        { id: "clay", group: "aloe-summer", wateredDaysAgo: [0], vessel: { material: "unglazed" } },
        { id: "plastic", group: "aloe-summer", wateredDaysAgo: [0] },
      ],
    },
    answer: async (house) =>
      (await daysToRefill(house, "clay")) < (await daysToRefill(house, "plastic"))
        ? "clay sooner"
        : "no difference",
    says: ["clay sooner"],
  },
  {
    asked: "The new pot is much bigger: is that a problem?",
    where: "pot page",
    morning: {
      clock: 8,
      sky: settled(MILD),
      pots: [
        {
          id: "snug",
          group: "citrus",
          rimCm: 20,
          canopyCm: 26,
          tallCm: 30,
          mix: "peaty",
          wateredDaysAgo: [0],
        },
        {
          id: "roomy",
          group: "citrus",
          rimCm: 44,
          canopyCm: 26,
          tallCm: 30,
          mix: "peaty",
          wateredDaysAgo: [0],
        },
      ],
    },
    answer: async (house) =>
      (await daysToRefill(house, "roomy")) > (await daysToRefill(house, "snug"))
        ? "stays wet longer"
        : "no difference",
    says: ["stays wet longer"],
  },
  {
    asked: "Water runs straight through: is it wet now or not?",
    where: "brief",
    morning: {
      sky: settled(HOT),
      pots: [
        {
          id: "Pelargonium",
          group: "pelargonium",
          rimCm: 16,
          canopyCm: 36,
          mix: "peaty",
          wateredDaysAgo: [16],
          also: noted("water-runs-through"),
        },
      ],
    },
    answer: brief,
    says: [
      "Soak slowly: Pelargonium",
      /Likely causes?[^:]*: mix so dry that it sheds water/,
      "Lift it or weigh it",
    ],
  },
  {
    asked: "Frost tonight: water first, keep dry, cover or carry in?",
    where: "brief",
    morning: {
      season: "autumn",
      sky: after(COOL, COOL, { minC: -1, maxC: 8, cloudFrac: 0, windMPerS: 0.8 }, COOL),
      spots: SPOTS.filter(({ id }) => id === "bench" || id === "shed").map((spot) =>
        spot.id === "shed" ? { ...spot, room: { places: 1 } } : spot,
      ),
      pots: [
        { id: "Rose", group: "desert-rose", wateredDaysAgo: [20] },
        { id: "Pelargonium", group: "pelargonium", wateredDaysAgo: [3] },
      ],
    },
    answer: brief,
    says: [/Carry under cover: Rose/, /Wrap against cold: Pelargonium/, /hurt below/],
    saysNot: ["Water: Rose"],
  },
  {
    asked: "A heat wave is coming: more water, shade, or both?",
    where: "brief",
    morning: {
      sky: after(HOT, { minC: 25, maxC: 43, cloudFrac: 0 }),
      spots: SPOTS.filter(({ id }) => id === "bench"),
      pots: [{ id: "Fig", group: "fig-bonsai", rimCm: 20, canopyCm: 40, wateredDaysAgo: [2] }],
    },
    answer: brief,
    says: ["Water: Fig", /Shade: Fig, by \d\d:00/, "in full sun scorches it above"],
  },
  {
    asked: "A storm with hail is coming: which pots move, and how is the big one held?",
    where: "brief",
    morning: {
      sky: after(
        MILD,
        MILD,
        {
          minC: 15,
          maxC: 24,
          windMPerS: 11,
          gustMPerS: 24,
          cloudFrac: 0.7,
          rain: { mm: 25, from: 15, hours: 3 },
          thunder: [15, 16, 17],
        },
        MILD,
      ),
      spots: SPOTS.filter(({ id }) => id === "bench" || id === "shed").map((spot) =>
        spot.id === "shed" ? { ...spot, carry: "stairs" as const } : spot,
      ),
      pots: [
        { id: "Vine", group: "bougainvillea", rimCm: 20, tallCm: 110, canopyCm: 60, wateredDaysAgo: [2] },
        {
          id: "Big",
          group: "olive",
          rimCm: 60,
          tallCm: 190,
          canopyCm: 150,
          vessel: { material: "unglazed" },
          wateredDaysAgo: [2],
        },
      ],
    },
    answer: brief,
    says: [
      /(Carry under cover|Brace against wind): Vine/,
      "Thunder in reach from 15:00",
      "Official warnings come first",
    ],
    saysNot: ["Carry under cover: Big"],
  },
  {
    asked: "When may it be fed after repotting or after winter?",
    where: "pot page",
    morning: {
      sky: settled(WARM),
      pots: [{ id: "pot", group: "desert-rose", plantedDaysAgo: 20, roots: "pruned", wateredDaysAgo: [9] }],
    },
    answer: page("/pots/pot"),
    says: [/No feed until \w+ (2[1-9]|30|31) July: its roots are new/],
  },
  {
    asked: "The pots stand under the eaves: do they get anything from the rain?",
    where: "spots page",
    morning: {
      sky: after(WARM, GREY_WET),
      spots: SPOTS.map((spot) =>
        spot.id === "eave" ? { ...spot, roofEdge: { heightM: 2, behindM: 0.6 } } : spot,
      ),
      pots: [{ id: "pot", group: "pelargonium", at: "eave", wateredDaysAgo: [1] }],
    },
    answer: page("/spots"),
    says: ["rain only when wind drives it in under the edge"],
  },
  {
    asked: "It was brought indoors: how much less water does it need?",
    where: "what-if page",
    morning: {
      clock: 8,
      sky: settled(HOT),
      spots: dim,
      pots: [{ id: "pot", group: "aloe-summer", rimCm: 18, wateredDaysAgo: [0] }],
    },
    answer: page("/pots/pot/what-if?spot=sill"),
    says: [
      /Left at bench, nothing done\. It comes down to its refill point in \d+ days/,
      /Stood at sill, nothing else done\. It (does not come down|comes down to its refill point in \d+ days)/,
    ],
  },
  {
    asked: "Something looks wrong: act, or wait?",
    where: "brief",
    morning: {
      sky: settled(MILD),
      pots: [
        { id: "Jade", group: "jade", wateredDaysAgo: [3], also: noted("other") },
        { id: "Lemon", group: "citrus", rimCm: 34, canopyCm: 40, wateredDaysAgo: [1] },
      ],
    },
    answer: brief,
    says: ["1 pot to look at; one needs nothing today.", "Jade: Trouble, noted on"],
    saysNot: ["Look at the roots"],
  },
];

async function daysToRefill({ page: ask }: AskedHouse, potId: string): Promise<number> {
  const text = await ask(`/pots/${potId}`);
  const said = /refill point (?:(within a day)|in a day|in (\d+) days)/.exec(text);
  if (said) return said[1] ? 0 : Number(said[2] ?? 1);
  return text.includes("does not come down to its refill point") ? Number.POSITIVE_INFINITY : Number.NaN;
}
