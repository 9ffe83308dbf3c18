import { type Context, Hono } from "hono";
import type { ServiceSettings } from "./config.ts";
import { ownNamesOnly } from "./host-check.ts";
import { healthRoutes } from "./jobs/health.ts";
import type { JobParts } from "./jobs/job-parts.ts";
import type { Log } from "./log.ts";
import { createApp } from "./pages/app.tsx";
import { passphraseGate } from "./passphrase-gate.ts";
import { StoreFault } from "./store/store-fault.ts";

/** Everything that is served: its own names only, the passphrase before all, health, then the pages. */
export function houseApp(input: {
  readonly parts: JobParts;
  readonly settings: ServiceSettings;
  readonly options: { readonly demo?: boolean };
  isStopping(): boolean;
  replan(siteId: string): Promise<unknown>;
}): Hono {
  const { parts, settings, options, replan, isStopping } = input;
  const { store, tally, now, words, feed, log, briefAtHour, channels } = parts;
  const app = new Hono();
  app.use(ownNamesOnly(settings));
  if (settings.passphrase !== null) app.use(passphraseGate(settings.passphrase, now));
  app.route("/", healthRoutes({ store, tally, now, startedUtcMs: now(), isStopping }));
  const pages = createApp({
    store,
    feed,
    now,
    words,
    briefAtHour,
    channels,
    demo: options.demo ?? false,
    replan,
  });
  pages.onError((error, c) => faultAnswer(error, { c, log }));
  app.mount("/", pages.fetch);
  return app;
}

const DISK_FULL = 507;
const NOT_NOW = 503;

/** What went wrong in the house itself: once in the log, one line for the visitor, nothing of the inside. */
function faultAnswer(error: unknown, { c, log }: { c: Context; log: Log }): Response {
  log.error({ event: "request-broke", method: c.req.method, path: c.req.path, error });
  if (error instanceof StoreFault)
    return c.text(`${error.message}\n`, error.code === "store-full" ? DISK_FULL : NOT_NOW);
  return c.text(
    "Something went wrong here, and the log knows what. Nothing of this was kept; try again.\n",
    500,
  );
}
