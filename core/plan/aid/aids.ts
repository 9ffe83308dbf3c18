import type { PotStudy } from "../choice/pot-study.ts";
import type { HarmTerm } from "../harm/term.ts";
import type { AidAction } from "../plan.ts";

/** Something that can be done to a pot where it stands. */
export interface Aid {
  readonly action: AidAction;
  /** Share of each harm that it takes away. Chosen by us; no trials are known to us. */
  readonly takesFrac: Readonly<Partial<Record<HarmTerm, number>>>;
  /** Trouble in trips of 10 kg over level ground. Chosen by us. */
  readonly trips: number;
  readonly isPossible: (study: Pick<PotStudy, "lift">) => boolean;
}

const always = () => true;

/** In the order in which they are preferred when they come to the same. */
export const AIDS: readonly Aid[] = [
  {
    // Leaning on a brick, half the rim turns from the rain and the low side drains; not with a pot that takes a trolley.
    action: "tilt",
    takesFrac: { "wet-roots": 0.5, "wet-cold": 0.4 },
    trips: 0.2,
    isPossible: ({ lift }) => lift.hands !== "trolley",
  },
  {
    // A board, a sheet or fleece: keeps nearly all rain from the mix, and some degrees of the clear sky from the leaves.
    action: "top-cover",
    takesFrac: { "wet-roots": 0.8, "wet-cold": 0.8, "wet-wound": 0.8, cold: 0.5 },
    trips: 0.5,
    isPossible: always,
  },
  {
    // Tied to something fixed, set among others or laid down on its lee side.
    action: "brace",
    takesFrac: { wind: 0.8 },
    trips: 0.4,
    isPossible: always,
  },
  {
    // Cloth or another plant between it and the sun for the hot hours.
    action: "shade",
    takesFrac: { heat: 0.7 },
    trips: 0.4,
    isPossible: always,
  },
];
