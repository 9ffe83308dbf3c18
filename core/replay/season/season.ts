import type { DayAxis } from "../hours/day-axis.ts";
import type { Outlook, PlaceNormals } from "../policies/outlook.ts";
import type { Stage } from "../world/known-pot.ts";
import type { WorldClock } from "../world/world-clock.ts";
import type { WorldPot } from "../world/world-pot.ts";
import type { Trouble } from "./deeds-of-morning.ts";

/** One season of one world: everything but the policy. */
export interface Season {
  readonly stage: Stage;
  readonly axis: DayAxis;
  readonly clock: WorldClock;
  readonly pots: readonly WorldPot[];
  readonly normals: PlaceNormals;
  readonly outlookAt: (day: number) => Outlook;
  /** In the open, by hour of the axis. */
  readonly trueRainMm: Float64Array;
  readonly trouble: Trouble;
  readonly seed: number;
  readonly fromDay: number;
  /** Exclusive; a further day has to follow it on the axis. */
  readonly toDay: number;
}
