import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { startDemoFeed } from "../../demo/demo-feed.ts";
import { demoCollection } from "../../demo/harbour.ts";
import { demoJournal } from "../../demo/harbour-journal.ts";
import { readSettings } from "../../service/config.ts";
import { makePlanNow } from "../../service/jobs/make-plan-now.ts";
import { createLog } from "../../service/log.ts";
import { type RunningService, startService } from "../../service/start-service.ts";
import { openStore, type Store } from "../../service/store/open-store.ts";
import { STORE_NAME } from "../../service/store/store-names.ts";

const COPIES = 12;

/** Pots in the full house. */
export const FULL_HOUSE_POTS = COPIES * demoCollection.pots.length;

/** The demonstration twelve times over, planned once, as it is served: what a large grower keeps. */
export async function fullHouse(): Promise<RunningService> {
  const dataDir = mkdtempSync(join(tmpdir(), "full-house-"));
  const store = await openStore(join(dataDir, STORE_NAME));
  await fill(store);
  await store.close();
  const read = readSettings({ LEEBENCH_DATA_DIR: dataDir, LEEBENCH_PORT: "0" });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const running = await startService(read.value, {
    beating: false,
    log: createLog({ level: "error", secrets: [] }),
    write: () => undefined,
  });
  const close = async () => {
    await running.close();
    rmSync(dataDir, { recursive: true, force: true });
  };
  return { ...running, close };
}

async function fill(store: Store): Promise<void> {
  const nowUtcMs = Date.now();
  const { site, spots, mixes, pots } = demoCollection;
  await store.sites.put(site);
  for (const spot of spots) await store.spots.put(site.id, spot);
  for (const mix of mixes) await store.mixes.put(site.id, mix);
  const journal = demoJournal(nowUtcMs);
  for (let copy = 0; copy < COPIES; copy++) {
    for (const pot of pots) await store.pots.put(site.id, { ...pot, id: `${pot.id}-${copy}` });
    await store.journal.append(
      site.id,
      journal.map((entry) => ({
        ...entry,
        id: `${entry.id}-${copy}`,
        ...(entry.potId === undefined ? {} : { potId: `${entry.potId}-${copy}` }),
      })),
    );
  }
  const { server, feed } = await startDemoFeed(nowUtcMs);
  const made = await makePlanNow({ store, siteId: site.id, nowUtcMs, feed });
  await server.close();
  if (!made.ok) throw new Error(JSON.stringify(made.problems));
}
