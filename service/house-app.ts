import { Hono } from "hono";
import type { ServiceSettings } from "./config.ts";
import { healthRoutes } from "./jobs/health.ts";
import type { JobParts } from "./jobs/job-parts.ts";
import { createApp } from "./pages/app.tsx";
import { passphraseGate } from "./passphrase-gate.ts";

/** Everything that is served: the passphrase before all, health, then the pages. */
export function houseApp(input: {
  readonly parts: JobParts;
  readonly settings: ServiceSettings;
  readonly options: { readonly demo?: boolean };
  isStopping(): boolean;
  replan(siteId: string): Promise<unknown>;
}): Hono {
  const { parts, settings, options, replan, isStopping } = input;
  const { store, tally, now, words, feed } = parts;
  const app = new Hono();
  if (settings.passphrase !== null) app.use(passphraseGate(settings.passphrase, now));
  app.route("/", healthRoutes({ store, tally, now, startedUtcMs: now(), isStopping }));
  app.mount("/", createApp({ store, feed, now, words, demo: options.demo ?? false, replan }).fetch);
  return app;
}
