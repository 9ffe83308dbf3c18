import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import process from "node:process";
import type { Plan } from "../core/plan/plan.ts";
import type { Outcome } from "../core/problem.ts";
import type { ServiceSettings } from "../service/config.ts";
import { type RunningService, startService } from "../service/start-service.ts";
import { startDemoFeed } from "./demo-feed.ts";
import { fillStore } from "./fill-store.ts";
import { demoCollection } from "./harbour.ts";

export interface RunningDemo {
  readonly url: string;
  /** Its own, apart from the user's. */
  readonly dataDir: string;
  readonly plan: Outcome<Plan>;
  /** Ends the service and the stand-in feed and removes the demonstration's data. */
  close(): Promise<void>;
}

/** Ports tried upward from the one asked for before any free one is taken. */
const PORTS_TRIED = 20;

/** The real service on an invented roof: a data folder of its own, removed at the end, and weather from loopback. */
export async function startDemo(settings: ServiceSettings, nowUtcMs: number): Promise<RunningDemo> {
  const closing: (() => void | Promise<void>)[] = [];
  const close = async () => {
    for (let step = closing.pop(); step; step = closing.pop()) await step();
  };
  try {
    const dataDir = mkdtempSync(join(tmpdir(), "leebench-demo-"));
    const remove = () => rmSync(dataDir, { recursive: true, force: true });
    closing.push(remove);
    // Also when the process ends without being asked, such as at a closed pipe.
    process.once("exit", remove);
    const { server, feed } = await startDemoFeed(nowUtcMs);
    closing.push(() => server.close());
    await fillStore(dataDir, nowUtcMs);
    const service = await startOnFreePort({ ...settings, dataDir, feed, mail: null });
    closing.push(() => service.close());
    return { url: service.url, dataDir, plan: await firstPlan(service), close };
  } catch (error) {
    await close();
    throw error;
  }
}

async function startOnFreePort(settings: ServiceSettings): Promise<RunningService> {
  for (let port = settings.port; ; port++) {
    const last = port >= Math.min(settings.port + PORTS_TRIED, 65_535);
    try {
      return await startService(
        { ...settings, port: last ? 0 : port },
        { demo: true, write: () => undefined },
      );
    } catch (error) {
      if (last || (error as NodeJS.ErrnoException).code !== "EADDRINUSE") throw error;
    }
  }
}

/** The morning's plan where its hour has come, else one made now. */
async function firstPlan(service: RunningService): Promise<Outcome<Plan>> {
  const siteId = demoCollection.site.id;
  await service.beatNow();
  const morning = await service.store.plans.latest(siteId);
  if (morning) return { ok: true, value: morning };
  const made = await service.replan(siteId);
  return made.ok ? { ok: true, value: made.value.plan } : made;
}
