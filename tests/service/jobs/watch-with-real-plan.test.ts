import { expect, it, onTestFinished } from "vitest";
import { startFeedServer } from "../../../demo/feed-server.ts";
import { inventedWeather } from "../../../demo/invented-weather.ts";
import type { InventedCourse, InventedWeather } from "../../../demo/invented-weather-type.ts";
import { readSettings } from "../../../service/config.ts";
import { startService } from "../../../service/start-service.ts";
import { fill, spot } from "../store/bench.ts";
import { tempFolder } from "../store/test-store.ts";

const MORNING = Date.parse("2031-05-02T03:30Z");
const HOUR_MS = 3_600_000;
const INVENTED = inventedWeather(MORNING, 20);

function colder<T extends InventedCourse>(course: T, byC: number): T {
  const less = (values: readonly number[]) => values.map((value) => value - byC);
  return { ...course, tempC: less(course.tempC), dewPointC: less(course.dewPointC) };
}

function colderWeather(byC: number): InventedWeather {
  return {
    ...INVENTED,
    hours: colder(INVENTED.hours, byC),
    members: INVENTED.members.map((member) => colder(member, byC)),
  };
}

it("a forecast that turns to frost after the morning is told once, and not again while it wobbles", async () => {
  const clock = { nowUtcMs: MORNING };
  const sky = { weather: colderWeather(0) };
  const feed = await startFeedServer({ weatherAt: () => sky.weather, nowUtcMs: () => clock.nowUtcMs });
  onTestFinished(() => feed.close());
  const read = readSettings({
    LEEBENCH_DATA_DIR: tempFolder(),
    LEEBENCH_PORT: "0",
    LEEBENCH_FEED_URL: feed.url,
    LEEBENCH_ENSEMBLE_URL: feed.url,
    LEEBENCH_LOG_LEVEL: "silent",
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const printed: string[] = [];
  const service = await startService(read.value, {
    now: () => clock.nowUtcMs,
    beating: false,
    write: (text) => void printed.push(text),
  });
  onTestFinished(() => service.close());
  await fill(service.store);
  const indoors = {
    kind: "indoors",
    skyFrac: 0.2,
    sunFrac: 0.5,
    windFrac: 0,
    rainFrac: 0,
    heatedToC: 12,
  } as const;
  await service.store.spots.put("yard", spot({ id: "hall", name: "Hall", walkOrder: 2, ...indoors }));

  await service.beatNow();
  expect(printed).toHaveLength(1);
  const morning = await service.store.plans.latest("yard");
  expect(morning?.pots[0]?.action).not.toBe("carry-in");

  for (const byC of [24, 23.5, 24.5, 24]) {
    sky.weather = colderWeather(byC);
    clock.nowUtcMs += 3.5 * HOUR_MS;
    await service.beatNow();
  }
  expect(printed).toHaveLength(2);
  expect(printed[1]).toMatch(/^Changed for Friday 2 May, Yard\n- Lemon: .+\n/);
  expect(printed[1]).toContain("Hall");
});
