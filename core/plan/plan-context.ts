import { type Launch, trajectoryFor } from "../pot/roll-out.ts";
import type { Trajectory } from "../pot/trajectory.ts";
import type { LocalDay } from "../site/local-days.ts";
import type { Site } from "../site/site.ts";
import type { SpotId } from "../site/spot.ts";
import type { WeatherReady } from "../weather/ready.ts";
import type { Collection } from "./collection.ts";
import type { PlanDay } from "./days/plan-days.ts";
import type { SpotDays } from "./days/spot-days.ts";
import type { SpotHarmBook } from "./harm/spot-harm.ts";
import type { WaterTerm } from "./harm/term.ts";
import type { Settings } from "./settings.ts";

/** What every step of one planning run reads; nothing in it is changed but its memories and the scratch. */
export interface PlanContext {
  readonly collection: Collection;
  readonly site: Site;
  readonly settings: Settings;
  readonly nowUtcMs: number;
  readonly weatherAgeHours: number;
  readonly ready: WeatherReady;
  readonly startUtcMs: number;
  readonly hourCount: number;
  readonly size: number;
  readonly days: readonly PlanDay[];
  readonly dayOfHour: Int16Array;
  /** Calendar days from now on, as outlooks count them. */
  readonly localDays: readonly LocalDay[];
  /** Hours with thunder in reach or within 30 minutes after. */
  readonly thunder: Uint8Array;
  readonly spots: ReadonlyMap<SpotId, SpotDays>;
  readonly book: SpotHarmBook;
  /** Spots as they would be without rain, made when first asked for. */
  readonly rainless: Map<SpotId, SpotDays>;
  /** Written over by every roll-out: one to keep while the other is tried. */
  readonly scratch: { readonly kept: Scratch; readonly tried: Scratch };
  /** The pot that was rolled out last, made ready: its courses follow one another. */
  readonly launch: { last: Launch | null };
}

/** What one roll-out is written to. */
export interface Scratch {
  readonly trajectory: Trajectory;
  /** Harm by particle. */
  readonly harm: Readonly<Record<WaterTerm, Float64Array>>;
}

/** Room for one roll-out. */
export function scratchFor(size: number, hourCount: number): Scratch {
  const column = () => new Float64Array(size);
  return {
    trajectory: trajectoryFor(size, hourCount),
    harm: { thirst: column(), "wet-roots": column(), "wet-wound": column(), "wet-cold": column() },
  };
}
