import { copyFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it, onTestFinished } from "vitest";
import { startFeedServer } from "../../../demo/feed-server.ts";
import type { FaultSwitch } from "../../../demo/feed-server-fault.ts";
import { inventedWeather } from "../../../demo/invented-weather.ts";
import { readSettings } from "../../../service/config.ts";
import { startService } from "../../../service/start-service.ts";
import { backUp } from "../../../service/store/backup.ts";
import { openStore } from "../../../service/store/open-store.ts";
import { restore } from "../../../service/store/restore.ts";
import { STORE_NAME } from "../../../service/store/store-names.ts";
import { exportAll, importAll } from "../../../service/store/transfer.ts";
import { fill, note } from "./bench.ts";
import { tempFolder } from "./test-store.ts";

const MORNING = Date.parse("2031-05-02T03:30Z");
const DAY_MS = 86_400_000;

/** The real service on a folder, as one machine would run it. */
async function machine(dataDir: string, { feedUrl, nowUtcMs }: { feedUrl: string; nowUtcMs: number }) {
  const read = readSettings({
    LEEBENCH_DATA_DIR: dataDir,
    LEEBENCH_PORT: "0",
    LEEBENCH_FEED_URL: feedUrl,
    LEEBENCH_ENSEMBLE_URL: feedUrl,
    LEEBENCH_FEED_TIMEOUT_S: "2",
    LEEBENCH_LOG_LEVEL: "silent",
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const printed: string[] = [];
  const service = await startService(read.value, {
    now: () => nowUtcMs,
    beating: false,
    write: (text) => void printed.push(text),
  });
  return { service, printed };
}

it("a house that moves to another machine, with one file and nothing else, goes on as if nothing had been", async () => {
  const faults: FaultSwitch = { fault: null };
  const invented = inventedWeather(MORNING, 20);
  const feed = await startFeedServer({ weatherAt: () => invented, nowUtcMs: () => MORNING, faults });
  onTestFinished(() => feed.close());
  const [old, carried, other] = [tempFolder(), tempFolder(), tempFolder()];
  const before = await machine(old, { feedUrl: feed.url, nowUtcMs: MORNING });
  await fill(before.service.store);
  await before.service.store.people.put({ id: "p", name: "Tov", locale: "de", units: "metric", quiet: null });
  await before.service.store.journal.append("yard", [note("n1")]);
  await before.service.beatNow();
  expect(before.printed).toHaveLength(1);
  const { file } = await backUp(before.service.store, {
    dir: join(old, "b"),
    nowUtcMs: MORNING,
    keepCount: 2,
  });
  const told = await exportAll(before.service.store, MORNING);
  const { houseId } = before.service.store;
  await before.service.close();

  copyFileSync(file, join(carried, "the-file.db"));
  await restore({ backupFile: join(carried, "the-file.db"), dataDir: other, nowUtcMs: MORNING });
  faults.fault = "down";
  const after = await machine(other, { feedUrl: feed.url, nowUtcMs: MORNING + 60_000 });
  expect(await exportAll(after.service.store, MORNING)).toEqual(told);
  expect((await after.service.store.people.list()).map(({ name }) => name)).toEqual(["Tov"]);
  expect(after.service.store.houseId).toBe(houseId);
  await after.service.beatNow();
  expect(after.printed, "the morning has been told already").toEqual([]);
  const page = await (await fetch(new URL("pots", after.service.url))).text();
  expect(page).toContain("Lemon");
  await after.service.close();

  const nextDay = await machine(other, { feedUrl: feed.url, nowUtcMs: MORNING + DAY_MS });
  await nextDay.service.beatNow();
  expect(nextDay.printed).toHaveLength(1);
  expect((await nextDay.service.store.plans.latest("yard"))?.forDay).toBe("2031-05-03");
  await nextDay.service.close();

  const third = await openStore(join(tempFolder(), STORE_NAME));
  onTestFinished(() => third.close());
  expect(await importAll(third, JSON.parse(JSON.stringify(told)))).toMatchObject({ ok: true });
  expect((await exportAll(third, MORNING)).sites).toEqual(told.sites);
});
