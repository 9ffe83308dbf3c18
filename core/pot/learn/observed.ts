import type { JournalEntry } from "../../journal/entry.ts";
import type { MixInVessel } from "../../mix/mix-in-vessel.ts";
import type { Tank } from "../balance/tank.ts";
import type { Particles } from "../particles.ts";

/** The pot at the moment of an observation. */
export interface Observed {
  readonly particles: Particles;
  readonly tank: Tank;
  readonly inVessel: MixInVessel;
  readonly depthCm: number;
  readonly seed: number;
  readonly entry: JournalEntry;
}
