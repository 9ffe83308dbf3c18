import { portionsOf } from "../../mix/blend.ts";
import { careNotes } from "../../mix/care-notes.ts";
import { componentsById } from "../../mix/library.ts";
import { instantOf } from "../../site/instant.ts";
import { dryWindows } from "../../weather/dry-windows.ts";
import type { WeatherReady } from "../../weather/ready.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import type { Collection } from "../collection.ts";
import type { WorkWindow } from "../plan.ts";
import type { Settings } from "../settings.ts";

/**
 * Hours for potting, each with the hour at which to begin what the mixes in use need beforehand: a day in water, an hour
 * to damp down. Nothing is said where that hour is over, or where nothing needs it.
 */
export function workWindows(input: {
  ready: WeatherReady;
  collection: Collection;
  settings: Settings;
  nowUtcMs: number;
}): WorkWindow[] {
  const { ready, collection, settings, nowUtcMs } = input;
  const leadMs = prepareHours(collection) * HOUR_MS;
  return dryWindows({ ready, site: collection.site, settings }).map((window) => {
    const prepareUtcMs = Date.parse(window.from) - leadMs;
    const isAhead = leadMs > 0 && prepareUtcMs >= nowUtcMs;
    return { ...window, ...(isAhead ? { prepareFrom: instantOf(prepareUtcMs) } : {}) };
  });
}

/** Hours of the longest preparation; letting compost mature takes weeks and is not waited for. */
function prepareHours({ mixes, ownComponents }: Collection): number {
  const components = componentsById(ownComponents);
  const notes = mixes.flatMap(({ recipe }) => {
    if (recipe.kind !== "parts") return [];
    const portions = portionsOf(recipe.parts, components);
    return portions.ok ? careNotes(portions.value) : [];
  });
  return Math.max(0, ...notes.filter(({ code }) => code !== "let-mature").map(({ hours }) => hours));
}
