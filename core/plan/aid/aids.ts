import type { AidAction, Lift } from "../deed.ts";
import type { HarmTerm } from "../harm/term.ts";

/** What of a pot decides how much trouble an aid is. */
export interface PotInHand {
  readonly lift: Lift;
  readonly rimCm: number;
}

/** What of a pot and its days decides whether an aid holds. */
export interface AidedPot extends PotInHand {
  /** Strongest gust where it stands over the days in question, and the gust that tips it. */
  readonly gustMPerS: number;
  readonly tipMPerS: number;
}

/** Something that can be done to a pot where it stands. */
export interface Aid {
  readonly action: AidAction;
  /** Share of each harm that it takes away. Chosen by us; no trials are known to us. */
  readonly takesFrac: Readonly<Partial<Record<HarmTerm, number>>>;
  /** Share that it takes of the harm of what the pot has soaked up already. */
  readonly takesSoakedFrac?: number;
  /** Trouble in trips of 10 kg over level ground. Chosen by us. */
  readonly trips: (pot: PotInHand) => number;
  readonly isPossible: (pot: AidedPot) => boolean;
}

const always = () => true;

/**
 * Gust at the pot in which no sheet that is put on in a minute stays on. Chosen by us: near gale, Beaufort 7, begins at
 * 13.9 m/s ten metres up [WMO Beaufort scale, from memory], three quarters of that at the height of pots.
 */
const SHEET_FLIES_MPERS = 10.4;
/** A leaning pot tips sooner. Chosen by us. */
const LEANING_TIPS_FRAC = 0.7;

/** Tied to something fixed, set among others or laid down on its lee side. */
export const BRACE = {
  action: "brace",
  takesFrac: { wind: 0.8 },
  trips: () => 0.4,
  isPossible: always,
} as const satisfies Aid;

/** Cloth or another plant between it and the sun for the hot hours. */
export const SHADE = {
  action: "shade",
  takesFrac: { heat: 0.7 },
  trips: () => 0.4,
  isPossible: always,
} as const satisfies Aid;

/** In the order in which they are preferred when they come to the same. */
export const AIDS: readonly Aid[] = [
  {
    // Leaning on a brick, half the rim turns from the rain, and the low edge drains what stood over the whole base: common practice.
    action: "tilt",
    takesFrac: { "wet-roots": 0.6, "wet-cold": 0.4 },
    takesSoakedFrac: 0.5,
    trips: ({ lift }) => 0.15 + lift.massKg / 60,
    isPossible: ({ lift, gustMPerS, tipMPerS }) =>
      lift.hands !== "trolley" && gustMPerS < LEANING_TIPS_FRAC * tipMPerS,
  },
  {
    // A board, a sheet or fleece: keeps nearly all rain from the mix, and some degrees of the clear sky from the leaves.
    action: "top-cover",
    takesFrac: { "wet-roots": 0.8, "wet-cold": 0.8, "wet-wound": 0.8, cold: 0.5 },
    trips: ({ rimCm }) => 0.3 + rimCm / 100,
    isPossible: ({ gustMPerS }) => gustMPerS < SHEET_FLIES_MPERS,
  },
  BRACE,
  SHADE,
];
