import { Hono } from "hono";
import { sql } from "kysely";
import type { Store } from "../store/open-store.ts";
import { metricsText } from "./metrics-text.ts";
import type { Tally } from "./tally.ts";

export interface HealthInput {
  readonly store: Store;
  readonly tally: Tally;
  readonly now: () => number;
  readonly startedUtcMs: number;
  /** True from the moment of the first signal to stop. */
  isStopping(): boolean;
}

/** A beat comes every minute; three missed ones mean that the jobs stand still. Chosen by us. */
const LONGEST_SILENCE_MS = 3.5 * 60_000;

/** For whoever watches from outside: alive, ready, and counts in the Prometheus text format. */
export function healthRoutes(input: HealthInput): Hono {
  const app = new Hono();
  app.get("/healthz", (c) => c.text("alive\n"));
  app.get("/readyz", async (c) => {
    const wanting = await whatIsWanting(input);
    return wanting.length === 0 ? c.text("ready\n") : c.text(`${wanting.join("\n")}\n`, 503);
  });
  app.get("/metrics", async (c) => {
    c.header("Content-Type", "text/plain; version=0.0.4; charset=utf-8");
    return c.body(await metricsText(input));
  });
  return app;
}

async function whatIsWanting(input: HealthInput): Promise<string[]> {
  const wanting: string[] = [];
  if (input.isStopping()) wanting.push("stopping");
  if (!(await answers(input.store))) wanting.push("the store does not answer");
  const lastBeat = input.tally.lastUtcMs.get("beat") ?? input.startedUtcMs;
  if (input.now() - lastBeat > LONGEST_SILENCE_MS) wanting.push("the jobs stand still");
  return wanting;
}

async function answers(store: Store): Promise<boolean> {
  try {
    await sql`SELECT count(*) FROM site`.execute(store.db);
    return true;
  } catch {
    return false;
  }
}
