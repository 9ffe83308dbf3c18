import type { Scenario } from "./scenario.ts";
import { SPOTS } from "./scenario-pots.ts";
import { after, HOT, MILD, SCORCHING, settled, WARM } from "./skies.ts";

const breezy = { ...MILD, gustMPerS: 19, windMPerS: 9 };
const HAIL = { ...WARM, rain: { mm: 12, from: 15, hours: 2 }, thunder: [15, 16], hail: [15] };
const nextTo = SPOTS.map((spot) => ({ ...spot, carry: "few-steps" as const }));

/** Where a plan can be right by its numbers and silly to a grower. Common practice throughout. */
export const THOUGHTFUL: readonly Scenario[] = [
  {
    situation: "a bonsai fig on the sill with water in its saucer, mild dry days",
    why: "the saucer is emptied; nobody carries it out of doors to dry",
    sky: settled(MILD),
    pots: [
      {
        id: "fig",
        group: "fig-bonsai",
        at: "sill",
        mix: "peaty",
        vessel: { topCm: 24, baseCm: 22, heightCm: 7, saucerCm: 2 },
        wateredDaysAgo: [2, 1],
      },
    ],
    expected: { fig: { never: ["carry-in"] } },
  },
  {
    situation: "a heavy lemon that a gust may just push over",
    why: "a stake does what two people and a trolley would: brace it where it stands",
    sky: after(MILD, MILD, breezy, MILD),
    pots: [{ id: "lemon", group: "citrus", rimCm: 38, tallCm: 110, canopyCm: 90, wateredDaysAgo: [1] }],
    expected: { lemon: { never: ["carry-in"] } },
  },
  {
    situation: "a lemon two weeks in the dim shed, scorching today and tomorrow, mild after",
    why: "leaves that are not used to the sun go out once the heat is over",
    sky: after(HOT, SCORCHING, SCORCHING, MILD),
    pots: [
      {
        id: "lemon",
        group: "citrus",
        rimCm: 26,
        wateredDaysAgo: [2],
        also: [{ daysAgo: 14, body: { kind: "moved", toSpotId: "shed" } }],
      },
    ],
    expected: { lemon: { first: "none" } },
  },
  {
    situation: "a small hibiscus in a heat wave, watered an hour ago",
    why: "a full pot takes no more, however soon it dries: look again in the evening",
    clock: 8,
    sky: settled(HOT),
    pots: [{ id: "hibiscus", group: "hibiscus", rimCm: 18, canopyCm: 36, wateredDaysAgo: [1, 0] }],
    expected: { hibiscus: { never: ["water", "soak-slowly"] } },
  },
  {
    situation: "hail in the afternoon, a shelf under a roof two steps from small leafy pots",
    why: "two steps are little for whole leaves",
    sky: after(WARM, HAIL, WARM),
    spots: nextTo,
    pots: [
      { id: "seedling", group: "other-leafy", rimCm: 10, canopyCm: 12, tallCm: 12, wateredDaysAgo: [0.9] },
    ],
    expected: { seedling: { asks: ["carry-in"], reason: "hail", before: { day: 0, clock: 15 } } },
  },
  {
    situation: "the same afternoon, a big olive far from any roof",
    why: "an olive takes some torn leaves; it stays",
    sky: after(WARM, HAIL, WARM),
    pots: [{ id: "olive", group: "olive", rimCm: 44, tallCm: 120, wateredDaysAgo: [2] }],
    expected: { olive: { never: ["carry-in"] } },
  },
  {
    situation: "pests noted on a pelargonium, rain this afternoon",
    why: "nothing is sprayed ahead of rain; they are looked for first",
    sky: after(WARM, { ...WARM, rain: { mm: 12, from: 15, hours: 3 } }, WARM),
    pots: [
      {
        id: "pelargonium",
        group: "pelargonium",
        wateredDaysAgo: [1],
        also: [{ daysAgo: 1, body: { kind: "trouble", sign: "pests" } }],
      },
    ],
    expected: { pelargonium: { never: ["water"], holds: ["treat"] } },
  },
];
