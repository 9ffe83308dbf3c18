import { afterEach, expect, it } from "vitest";
import { DAILY_WEIGHT_BUDGET } from "../../../service/feed/day-budget.ts";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { fetchWeather } from "../../../service/feed/fetch-weather.ts";
import { ensembleWeight, forecastWeight } from "../../../service/feed/pull-weight.ts";
import type { WeatherAsk } from "../../../service/feed/weather-ask.ts";
import { pullWeather } from "../../../service/jobs/pull-weather.ts";
import { type Loopback, serveHttp } from "../feed/loopback-server.ts";
import { ensembleBody, forecastBody, NOW_UTC_MS } from "../feed/wire-answers.ts";
import { fill, site } from "../store/bench.ts";
import { emptyStore } from "../store/test-store.ts";

const open: Loopback[] = [];
afterEach(async () => {
  for (const server of open.splice(0)) await server.close();
});

it("a service that dies in each of its pulls and is started again spends its day's budget and no more", async () => {
  let calls = 0;
  const server = await serveHttp((request, response) => {
    calls += 1;
    const body = request.url?.startsWith("/v1/ensemble") ? ensembleBody() : forecastBody();
    response.end(JSON.stringify(body));
  });
  open.push(server);
  const { url } = server;
  const feed = {
    ...DEFAULT_FEED_SETTINGS,
    forecastUrl: url,
    ensembleUrl: url,
    fallbackUrl: "",
    dailyCallCap: 1e6,
  };
  const store = await emptyStore();
  await fill(store);
  const diesAfter = async (ask: WeatherAsk) => {
    const answer = await fetchWeather(ask);
    if (answer.ok) throw new Error("killed");
    return answer;
  };
  const pull = (nowUtcMs: number) =>
    pullWeather({ store, site: site(), feed, nowUtcMs, fetchWeather: diesAfter });
  const most = Math.ceil(DAILY_WEIGHT_BUDGET / (forecastWeight(60) + ensembleWeight()));

  for (let start = 0; start < most; start++)
    await expect(pull(NOW_UTC_MS + start * 1000)).rejects.toThrow("killed");
  for (let start = most; start < most + 20; start++) {
    const pulled = await pull(NOW_UTC_MS + start * 1000);
    expect(pulled.ok ? "" : pulled.problems[0]?.code).toBe("feed-budget-spent");
  }
  // The last pull can pay for its forecast only.
  expect(calls).toBe(2 * most - 1);
  await expect(pull(NOW_UTC_MS + 86_400_000)).rejects.toThrow("killed");
});
