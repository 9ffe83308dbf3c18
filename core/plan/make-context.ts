import type { JournalEntry } from "../journal/entry.ts";
import type { SpotForcing } from "../site/forcing.ts";
import { forcingAtSpot } from "../site/forcing-at-spot.ts";
import { localDays } from "../site/local-days.ts";
import type { SpotId } from "../site/spot.ts";
import { weatherReady } from "../weather/ready.ts";
import { thunderHours } from "../weather/thunder.ts";
import { HOUR_MS, type Weather } from "../weather/weather.ts";
import type { Collection } from "./collection.ts";
import { dayOfHour, planDays } from "./days/plan-days.ts";
import { type SpotDays, spotDays } from "./days/spot-days.ts";
import { type PlanContext, scratchFor } from "./plan-context.ts";
import type { Settings } from "./settings.ts";

/** Readies the weather and carries it to every spot: what all pots share in one run. */
export function planContext(input: {
  collection: Collection;
  /** Corrections and undos already carried out. */
  journal: readonly JournalEntry[];
  weather: Weather;
  nowUtcMs: number;
  settings: Settings;
}): { context: PlanContext; past: Map<SpotId, SpotForcing> } {
  const { collection, settings, nowUtcMs } = input;
  const { site } = collection;
  const ready = weatherReady({
    weather: input.weather,
    site,
    journal: input.journal,
    nowUtcMs,
    cloudSize: settings.cloudSize,
    horizonHours: settings.horizonDays * 24,
    seed: settings.seed,
  });
  const { ahead } = ready;
  const thunder = thunderHours(ahead);
  const days = planDays({ ...ahead, thunder, zone: site.zone, settings });
  const past = new Map<SpotId, SpotForcing>();
  const spots = new Map<SpotId, SpotDays>();
  for (const spot of [...collection.spots].sort((a, b) => (a.id < b.id ? -1 : 1))) {
    past.set(spot.id, forcingAtSpot(ready.past, site, spot));
    const forcing = forcingAtSpot(ahead, site, spot);
    spots.set(spot.id, spotDays({ spot, ahead: forcing, past: past.get(spot.id), days }));
  }
  const context: PlanContext = {
    collection,
    site,
    settings,
    nowUtcMs,
    weatherAgeHours: Math.max(0, (nowUtcMs - input.weather.origin.fetchedUtcMs) / HOUR_MS),
    ready,
    startUtcMs: ahead.startUtcMs,
    hourCount: ahead.hourCount,
    size: ahead.memberCount,
    days,
    dayOfHour: dayOfHour(days, ahead.hourCount),
    localDays: localDays(ahead, site.zone),
    thunder,
    spots,
    book: { columns: new Map() },
    rainless: new Map(),
    scratch: {
      kept: scratchFor(ahead.memberCount, ahead.hourCount),
      tried: scratchFor(ahead.memberCount, ahead.hourCount),
    },
    launch: { last: null },
  };
  return { context, past };
}
