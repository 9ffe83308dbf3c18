import { expect, it } from "vitest";
import { plan } from "../../../core/plan/make-plan.ts";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { makePlanNow } from "../../../service/jobs/make-plan-now.ts";
import { planInputThen } from "../../../service/jobs/plan-basis.ts";
import { planTools } from "../../../service/jobs/plan-tools.ts";
import { fill, note, pot } from "../store/bench.ts";
import { someWeather, type Value } from "../store/some-weather.ts";
import { emptyStore } from "../store/test-store.ts";
import { house } from "./bench-jobs.ts";

const NOW = Date.parse("2031-05-12T03:30Z");
const DAY_MS = 24 * HOUR_MS;

/** Days that differ by a shift in warmth and rain, so that a correction of the past is a real one. */
function days(shift: number): Value {
  const values: Partial<Record<Parameters<Value>[0], (hour: number) => number>> = {
    tempC: (hour) => 14 + shift + 5 * Math.sin((hour / 24) * 2 * Math.PI),
    dewPointC: () => 8,
    rainMm: (hour) => (Math.floor(hour) % 50 === 0 ? 3 + shift : 0),
    windMPerS: () => 2,
    gustMPerS: () => 5,
    radiationMjPerM2: (hour) => (hour % 24 > 6 && hour % 24 < 18 ? 1.5 : 0),
    cloudFrac: () => 0.4,
    weatherCode: () => 1,
    feedEt0Mm: () => 0.15,
    feedRainChanceFrac: () => 0.2,
  };
  return (name, hour) => values[name]!(hour);
}

it("a past plan is reckoned again to the letter, whatever was entered, changed and corrected since", async () => {
  const store = await emptyStore();
  await fill(store);
  const bench = await house({ store });
  const tools = { ...planTools(bench.parts), plan, siteId: "yard" };
  const pulled = (fetchedUtcMs: number, pastDays: number, shift: number) =>
    store.weather.save(
      "yard",
      someWeather({
        startUtcMs: Math.floor(fetchedUtcMs / DAY_MS) * DAY_MS - pastDays * DAY_MS,
        hourCount: (pastDays + 10) * 24,
        memberCount: 3,
        fetchedUtcMs,
        value: days(shift),
      }),
    );
  const fetchWeather = async (ask: Parameters<typeof bench.parts.fetchWeather>[0]) => ({
    ok: false as const,
    problems: [{ code: "feed-refused", path: [] }],
    notes: [],
    state: ask.state!,
  });
  const settle = async () => ({ kind: "morning" as const, messages: [] });
  const make = (nowUtcMs: number) => makePlanNow({ ...tools, fetchWeather, nowUtcMs, settle });

  await pulled(NOW - 3 * DAY_MS, 20, 0);
  await pulled(NOW - DAY_MS, 2, 1);
  await make(NOW - DAY_MS);
  await pulled(NOW, 2, 2);
  const made = await make(NOW);
  if (!made.ok) throw new Error(JSON.stringify(made.problems));

  await store.journal.append("yard", [note("later")]);
  await store.pots.put("yard", pot({ name: "Renamed", canopyWidthCm: 80 }));
  await store.settings.put("yard", { ...(await store.settings.get("yard")), seed: 99 });
  await pulled(NOW + DAY_MS, 12, 7);
  await make(NOW + DAY_MS);

  const kept = await store.plans.toldOn("yard", "2031-05-12");
  const input = await planInputThen(store, kept!);
  expect(input!.previous?.forDay).toBe("2031-05-11");
  expect(JSON.stringify(plan(input!))).toBe(JSON.stringify(kept!.plan));
  expect(JSON.stringify(kept!.plan)).toBe(JSON.stringify(made.value.plan));
});

it("a plan whose forecast is kept no longer is said to be so", async () => {
  const bench = await house();
  const made = await makePlanNow({
    ...planTools(bench.parts),
    siteId: "yard",
    nowUtcMs: bench.clock.nowUtcMs,
  });
  expect(made.ok).toBe(true);
  const kept = (await bench.store.plans.latestStored("yard"))!;
  expect(await planInputThen(bench.store, kept)).not.toBeNull();
  expect(await planInputThen(bench.store, { ...kept, weatherPullId: null })).toBeNull();
  expect(await planInputThen(bench.store, { ...kept, id: 999 })).toBeNull();
});
