import { seededRandom, seedFrom } from "../../weather/seeded-random.ts";
import { REPLAY_STREAM } from "../hours/streams.ts";
import { runThroughMl, usableLeft } from "./water-hour.ts";
import type { WorldPot } from "./world-pot.ts";
import type { WorldState } from "./world-state.ts";

/** Scatter of what a lifting hand takes the usable share for, and where it divides light, middling and heavy. Chosen by us. */
const LIFT_SD_FRAC = 0.15;
const LIGHT_BELOW_FRAC = 0.28;
const HEAVY_FROM_FRAC = 0.68;
/** A finger's depth scatters by this factor; no finger or stick reaches further than this, cm. Chosen by us. */
const FINGER_SCATTER = 0.25;
const FINGER_MOST_CM = 6;
/** Kitchen scale, and jugs read by eye. Chosen by us: a hundredth and some grams; a thirtieth. */
const SCALE = { shareSd: 0.01, kgSd: 0.005 } as const;
const JUG_SHARE_SD = 0.03;
const JUG_ML_SD = 5;

/** What hands, finger, scale and jug tell of one pot on one morning; the same morning always tells the same. */
export function handsOn(
  pot: WorldPot,
  state: Readonly<WorldState>,
  of: { seed: number; day: number; pot: number },
) {
  const draw = (purpose: number) =>
    seededRandom(seedFrom([of.seed, REPLAY_STREAM.hands, of.day, of.pot, purpose]));
  return {
    feel(): "light" | "middling" | "heavy" {
      const felt = usableLeft(pot, state) + LIFT_SD_FRAC * draw(1).normal();
      return felt < LIGHT_BELOW_FRAC ? "light" : felt < HEAVY_FROM_FRAC ? "middling" : "heavy";
    },
    dryToCm(): number {
      const usable =
        (state.upperMl - pot.upperUnusableMl) / Math.max(1, pot.upperFullMl - pot.upperUnusableMl);
      const dryShare = Math.min(1, Math.max(0, 1 - usable));
      // Mix dries from the top: a layer that has lost half of its usable water is dry in its upper half.
      const depthCm = dryShare * pot.hidden.upperFrac * pot.depthCm;
      return Math.min(FINGER_MOST_CM, Math.round(depthCm * Math.exp(FINGER_SCATTER * draw(2).normal())));
    },
    massKg(): number {
      const massKg = pot.dryMassKg + (state.upperMl + state.lowerMl) / 1000;
      return Math.max(0.05, massKg * (1 + SCALE.shareSd * draw(3).normal()) + SCALE.kgSd * draw(4).normal());
    },
    /** A can that runs through, and what is caught beneath; both by the jug. */
    pouredDrainedMl(): { pouredMl: number; drainedMl: number } {
      const pouredMl = runThroughMl(pot, state);
      const missing =
        Math.max(0, pot.upperFullMl - state.upperMl) + Math.max(0, pot.lowerFullMl - state.lowerMl);
      const read = (ml: number, purpose: number) =>
        Math.max(
          0,
          ml * (1 + JUG_SHARE_SD * draw(purpose).normal()) + JUG_ML_SD * draw(purpose + 1).normal(),
        );
      const poured = read(pouredMl, 5);
      return { pouredMl: poured, drainedMl: Math.min(poured, read(pouredMl - missing, 7)) };
    },
  };
}

export type Hands = ReturnType<typeof handsOn>;
