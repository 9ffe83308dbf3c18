import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { startDemoFeed } from "../../demo/demo-feed.ts";
import { type RunningDemo, startDemo } from "../../demo/start-demo.ts";
import { readSettings, type ServiceSettings } from "../../service/config.ts";
import { startService } from "../../service/start-service.ts";

export interface HouseForPages {
  readonly url: string;
  close(): Promise<void>;
}

/** The demonstration as anybody starts it, on a free port. */
export async function demoHouse(): Promise<RunningDemo> {
  return startDemo(settingsFor(tmpdir()), Date.now());
}

/** A house that nobody has entered anything into, with invented weather to fetch. */
export async function emptyHouse(): Promise<HouseForPages> {
  const dataDir = await mkdtemp(join(tmpdir(), "leebench-pages-"));
  const { server, feed } = await startDemoFeed(Date.now());
  const service = await startService(
    { ...settingsFor(dataDir), feed },
    { beating: false, write: () => undefined },
  );
  const close = async () => {
    await service.close();
    await server.close();
    await rm(dataDir, { recursive: true, force: true });
  };
  return { url: service.url, close };
}

export function settingsFor(dataDir: string): ServiceSettings {
  const read = readSettings({ LEEBENCH_DATA_DIR: dataDir, LEEBENCH_PORT: "0", LEEBENCH_LOG_LEVEL: "silent" });
  if (!read.ok) throw new Error(`settings for the page tests: ${JSON.stringify(read.problems)}`);
  return read.value;
}
