import type { JournalEntry } from "../../core/journal/entry.ts";
import type { Collection } from "../../core/plan/collection.ts";
import type { Plan } from "../../core/plan/plan.ts";
import type { Settings } from "../../core/plan/settings.ts";
import type { Weather } from "../../core/weather/weather.ts";

/** What `plan` takes. */
export interface PlanInput {
  readonly collection: Collection;
  readonly journal: readonly JournalEntry[];
  readonly weather: Weather;
  readonly nowUtcMs: number;
  readonly settings: Settings;
  readonly previous?: Plan;
}
