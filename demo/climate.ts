import { seededRandom, seedFrom } from "../core/weather/seeded-random.ts";

/** What the air does in a day, without its showers. */
export interface Air {
  readonly meanC: number;
  /** Half the way from the night's low to the afternoon's high. */
  readonly halfRangeC: number;
  readonly dewPointC: number;
  /** Mean wind at 10 m. */
  readonly windMPerS: number;
  readonly cloudFrac: number;
}

/** A stretch of rain; instants in days from the local midnight that began today. */
export interface Shower {
  readonly fromDay: number;
  readonly hours: number;
  readonly totalMm: number;
  readonly thunder: boolean;
}

/**
 * The story of the coming days: heat before a front, the front's thunderstorm tomorrow afternoon, showers behind it,
 * then clear and ever calmer air with a cold night, and warmth again. Invented; no climate of a real place.
 */
const STORY: ReadonlyMap<number, Air> = new Map([
  [-4, air(26, 5, 15, 3.5, 0.2)],
  [-3, air(27, 6, 14, 3, 0.15)],
  [-2, air(27.5, 6, 13, 3, 0.1)],
  [-1, air(28, 6.5, 13, 2.8, 0.1)],
  [0, air(28, 6.5, 13, 2.6, 0.1)],
  [1, air(27, 5.5, 18, 4.5, 0.5)],
  [2, air(19, 3, 14, 6, 0.75)],
  [3, air(15, 4, 7, 4.5, 0.35)],
  [4, air(13.2, 6, 3, 2, 0.06)],
  [5, air(12.4, 7, 2, 0.9, 0.03)],
  [6, air(15, 7, 5, 1.6, 0.1)],
  [7, air(18, 6, 9, 2.6, 0.2)],
  [8, air(21, 6, 12, 3, 0.25)],
]);

const SHOWERS: readonly Shower[] = [
  { fromDay: -34 + 15 / 24, hours: 3, totalMm: 11, thunder: true },
  { fromDay: -27 + 5 / 24, hours: 6, totalMm: 7, thunder: false },
  { fromDay: -19 + 16 / 24, hours: 3, totalMm: 13, thunder: true },
  { fromDay: -12 + 3 / 24, hours: 7, totalMm: 9, thunder: false },
  { fromDay: -11 + 9 / 24, hours: 3, totalMm: 3, thunder: false },
  { fromDay: 1 + 14 / 24, hours: 4, totalMm: 34, thunder: true },
  { fromDay: 1 + 20 / 24, hours: 5, totalMm: 6, thunder: false },
  { fromDay: 2 + 9 / 24, hours: 4, totalMm: 5, thunder: false },
  { fromDay: 2 + 16 / 24, hours: 3, totalMm: 3, thunder: false },
  { fromDay: 10 + 4 / 24, hours: 6, totalMm: 8, thunder: false },
];

/** The air at an instant, in days from the local midnight that began today; days are joined noon to noon. */
export function airAt(dayTime: number, seed: number): Air {
  const before = Math.floor(dayTime - 0.5);
  const shareFrac = dayTime - 0.5 - before;
  const [a, b] = [airOfDay(before, seed), airOfDay(before + 1, seed)];
  const between = (from: number, to: number) => from + (to - from) * shareFrac;
  return {
    meanC: between(a.meanC, b.meanC),
    halfRangeC: between(a.halfRangeC, b.halfRangeC),
    dewPointC: between(a.dewPointC, b.dewPointC),
    windMPerS: between(a.windMPerS, b.windMPerS),
    cloudFrac: between(a.cloudFrac, b.cloudFrac),
  };
}

/** The showers of the story. Before it begins, one falls every nine days, so that months back are not a desert. */
export function showers(): Shower[] {
  const early = Array.from({ length: 7 }, (_, k) => ({
    fromDay: -43 - 9 * k + 14 / 24,
    hours: 4,
    totalMm: 6 + ((k * 5) % 9),
    thunder: false,
  }));
  return [...early, ...SHOWERS];
}

/** A settled day with a little wandering wherever the story has none. */
function airOfDay(day: number, seed: number): Air {
  const told = STORY.get(day);
  if (told) return told;
  const chance = seededRandom(seedFrom([seed, day]));
  return air(
    24.5 + 1.2 * chance.normal(),
    5.5 + 0.6 * chance.normal(),
    14.5 + 1.2 * chance.normal(),
    3.2 + 1.2 * chance.uniform(),
    0.1 + 0.35 * chance.uniform(),
  );
}

// Five figures in the order of the table's columns; named objects would hide the story in braces.
function air(
  meanC: number,
  halfRangeC: number,
  dewPointC: number,
  windMPerS: number,
  cloudFrac: number,
): Air {
  return { meanC, halfRangeC, dewPointC, windMPerS, cloudFrac };
}
