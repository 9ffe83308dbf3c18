import { readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { beat } from "../../../service/jobs/beat.ts";
import { someWeather } from "../store/some-weather.ts";
import { tempFolder } from "../store/test-store.ts";
import { house } from "./bench-jobs.ts";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const DAY_MS = 24 * HOUR_MS;
/** 02:30 in Berlin. */
const NIGHT = Date.parse("2031-05-02T00:30Z");

async function bench(backupDir: string) {
  const made = await house({ backupDir });
  made.clock.nowUtcMs = NIGHT;
  const nights = async () =>
    (await made.store.runs.latest("nightly")).map(({ outcome, detail }) => `${outcome} ${detail}`.trim());
  return { ...made, nights };
}

describe("the night's work", () => {
  it("makes one checked copy a night and keeps as many as were asked for", async () => {
    const dir = tempFolder();
    const { parts, clock, nights } = await bench(dir);
    for (let night = 0; night < 4; night++) {
      for (const minutes of [0, 1, 30]) {
        clock.nowUtcMs = NIGHT + night * DAY_MS + minutes * MINUTE_MS;
        await beat(parts);
      }
    }
    expect(readdirSync(dir).sort()).toEqual([
      "leebench-2031-05-04T003000Z.db",
      "leebench-2031-05-05T003000Z.db",
    ]);
    expect(await nights()).toEqual(["done", "done", "done", "done"]);
  });

  it("that cannot make its copy lets nothing go, says so, and tries again in an hour", async () => {
    const noFolder = join(tempFolder(), "taken");
    writeFileSync(noFolder, "a file where the folder should be");
    const { parts, store, clock, nights, logged } = await bench(noFolder);
    for (const days of [400, 1])
      await store.weather.save("yard", someWeather({ fetchedUtcMs: NIGHT - days * DAY_MS, hourCount: 1 }));
    for (let minute = 0; minute < 90; minute++) {
      await beat(parts);
      clock.nowUtcMs += MINUTE_MS;
    }
    expect(await nights()).toHaveLength(2);
    expect((await nights())[0]).toMatch(/^failed /);
    expect(logged.filter(({ event, job }) => event === "job-broke" && job === "nightly")).toHaveLength(2);
    expect(logged.filter(({ event }) => event === "let-go")).toEqual([]);
  });

  it("lets go of what is past its keeping time", async () => {
    const { parts, store } = await bench(tempFolder());
    for (const days of [400, 1])
      await store.weather.save("yard", someWeather({ fetchedUtcMs: NIGHT - days * DAY_MS, hourCount: 1 }));
    await beat(parts);
    expect(
      store.raw
        .prepare("SELECT count(*) FROM weather_pull WHERE fetched_utc_ms < ?")
        .pluck()
        .get(NIGHT - 300 * DAY_MS),
    ).toBe(0);
  });
});
