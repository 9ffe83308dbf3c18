import { describe, expect, it, onTestFinished } from "vitest";
import { startFeedServer } from "../../../demo/feed-server.ts";
import type { FaultName, FaultSwitch } from "../../../demo/feed-server-fault.ts";
import { inventedWeather } from "../../../demo/invented-weather.ts";
import { readSettings } from "../../../service/config.ts";
import { startService } from "../../../service/start-service.ts";
import { fill } from "../store/bench.ts";
import { tempFolder } from "../store/test-store.ts";

const MORNING = Date.parse("2031-05-02T03:30Z");
const HOUR_MS = 3_600_000;
const INVENTED = inventedWeather(MORNING, 20);

/** The real service, planner and feed client; the feed on loopback misbehaves as the test likes. */
async function houseAt(faults: FaultSwitch) {
  const clock = { nowUtcMs: MORNING };
  const feed = await startFeedServer({ weatherAt: () => INVENTED, nowUtcMs: () => clock.nowUtcMs, faults });
  onTestFinished(() => feed.close());
  const read = readSettings({
    LEEBENCH_DATA_DIR: tempFolder(),
    LEEBENCH_PORT: "0",
    LEEBENCH_FEED_URL: feed.url,
    LEEBENCH_ENSEMBLE_URL: feed.url,
    LEEBENCH_FEED_TIMEOUT_S: "1",
    LEEBENCH_LOG_LEVEL: "silent",
  });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const printed: string[] = [];
  const write = (text: string) => void printed.push(text);
  const service = await startService(read.value, { now: () => clock.nowUtcMs, beating: false, write });
  onTestFinished(() => service.close());
  await fill(service.store);
  return { service, clock, printed };
}

const FAULTS: readonly FaultName[] = [
  "down",
  "silent",
  "throttled",
  "overloaded",
  "html",
  "text",
  "half",
  "all-null",
];

describe("a morning whose feed is in trouble", () => {
  it.each(FAULTS)(
    "(%s) has its brief from the last good forecast, with its age and more care",
    async (fault) => {
      const faults: FaultSwitch = { fault: null };
      const { service, clock, printed } = await houseAt(faults);
      await service.beatNow();
      const fresh = await service.store.plans.latest("yard");
      expect(fresh?.weatherAge).toMatchObject({ source: "primary", ageHours: 0, trust: "full" });
      faults.fault = fault;
      clock.nowUtcMs += 24 * HOUR_MS;
      await service.beatNow();
      const later = await service.store.plans.latestStored("yard", ["morning"]);
      expect(later?.plan.forDay).toBe("2031-05-03");
      expect(later?.plan.weatherAge).toMatchObject({ ageHours: 24, fetchedAt: fresh?.weatherAge.fetchedAt });
      expect(later?.plan.weatherAge.trust).not.toBe("full");
      expect(printed).toHaveLength(2);
      expect(printed[1]).toContain("Saturday 3 May at Yard");
      expect((await service.app.request("/")).status).toBe(200);
      expect((await service.app.request("/readyz")).status).toBe(200);
    },
  );

  it("(nan) is mended, since only the echoed place is not a number", async () => {
    const { service } = await houseAt({ fault: "nan" });
    await service.beatNow();
    expect((await service.store.plans.latest("yard"))?.weatherAge.ageHours).toBe(0);
  });

  it("and stays so for a month still has its brief each morning", async () => {
    const faults: FaultSwitch = { fault: null };
    const { service, clock, printed } = await houseAt(faults);
    await service.beatNow();
    faults.fault = "down";
    for (const days of [5, 13, 15, 31]) {
      clock.nowUtcMs = MORNING + days * 24 * HOUR_MS;
      await service.beatNow();
      const plan = (await service.store.plans.latestStored("yard", ["morning"]))?.plan;
      expect(plan?.weatherAge).toMatchObject({ ageHours: days * 24, trust: "poor" });
    }
    const weekly = printed.filter((text) => text.startsWith("The week from Monday 2 June"));
    expect(weekly).toHaveLength(1);
    expect(printed).toHaveLength(5 + weekly.length);
  });
});

describe("a first day whose feed is in trouble", () => {
  it("makes no brief out of nothing, and one as soon as the feed answers", async () => {
    const faults: FaultSwitch = { fault: "down" };
    const { service, clock, printed } = await houseAt(faults);
    await service.beatNow();
    expect(printed).toEqual([]);
    expect((await service.app.request("/")).status).toBe(200);
    expect(await service.replan("yard")).toMatchObject({ ok: false, problems: [{ code: "no-weather-yet" }] });
    faults.fault = null;
    clock.nowUtcMs += HOUR_MS;
    await service.beatNow();
    expect(printed).toHaveLength(1);
  });
});
