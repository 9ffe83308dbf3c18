import type { Due } from "./due.ts";
import type { JobParts } from "./job-parts.ts";
import { pullWeather } from "./pull-weather.ts";

/** Asks the feed for one site, and looks whether the day's advice still holds. */
export async function pullAndWatch(parts: JobParts, due: Due): Promise<void> {
  const { store, feed, tally, log } = parts;
  const site = await store.sites.get(due.siteId ?? "");
  if (!site) return;
  const nowUtcMs = parts.now();
  const pulled = await pullWeather({ store, site, feed, nowUtcMs, fetchWeather: parts.fetchWeather });
  tally.count(pulled.ok ? "pull.done" : "pull.failed", nowUtcMs);
  const problems = (pulled.ok ? pulled.notes : pulled.problems).map(({ code, data }) => ({ code, data }));
  log[pulled.ok ? "info" : "warn"]({
    event: pulled.ok ? "pull-done" : "pull-failed",
    siteId: site.id,
    problems,
  });
}
