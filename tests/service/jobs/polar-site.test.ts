import { expect, it } from "vitest";
import { plan } from "../../../core/plan/make-plan.ts";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { beat } from "../../../service/jobs/beat.ts";
import { fill, site } from "../store/bench.ts";
import { someWeather } from "../store/some-weather.ts";
import { emptyStore } from "../store/test-store.ts";
import { house } from "./bench-jobs.ts";

const POLAR = site({ id: "north", latDeg: 78.22, lonDeg: 15.63, zone: "Arctic/Longyearbyen" });

it.each([
  ["2031-06-21T04:00Z", "without a sunset", 6],
  ["2031-12-21T05:00Z", "without a sunrise", -12],
])("on %s a site %s has its morning brief like any other", async (at, _sun, tempC) => {
  const store = await emptyStore();
  await fill(store, POLAR);
  const bench = await house({ store, plan });
  bench.clock.nowUtcMs = Date.parse(at);
  const startUtcMs = bench.clock.nowUtcMs - 48 * HOUR_MS;
  await store.weather.save(
    POLAR.id,
    someWeather({
      startUtcMs,
      hourCount: 200,
      fetchedUtcMs: bench.clock.nowUtcMs,
      value: (name) => (name === "tempC" ? tempC : name === "dewPointC" ? tempC - 4 : 0),
    }),
  );
  bench.feed.isDown = true;
  await beat(bench.parts);
  expect(bench.delivered).toHaveLength(1);
  expect(bench.logged.filter(({ event }) => String(event).endsWith("broke"))).toEqual([]);
  const made = await store.plans.latest(POLAR.id);
  expect(made?.forDay).toBe(at.slice(0, 10));
  expect(made?.pots.map(({ potId }) => potId)).toEqual(["p1"]);
});
