import { describe, expect, it } from "vitest";
import { plan as planFromCore } from "../../../core/plan/make-plan.ts";
import { HOUR_MS, type Weather } from "../../../core/weather/weather.ts";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { planInputNow } from "../../../service/jobs/plan-basis.ts";
import { createApp } from "../../../service/pages/app.tsx";
import { day, plan, collection as terrace } from "../brief/plan-builder.ts";
import { stockedStore } from "../pages/stocked-store.ts";

/**
 * Fifty mornings that told seven chances in ten of rain for the next day; it rained on the days whose number is not a
 * multiple of three. Reckoned by hand: told for days 1 to 50, of which 16 are such multiples, so 34 of 50 were wet.
 */
const DAYS = 50;
const WET_OF_50 = 34;
const FIRST_UTC_MS = Date.parse("2031-05-01T00:00Z");
const NOW_UTC_MS = FIRST_UTC_MS + ((DAYS + 1) * 24 + 6) * HOUR_MS;
const collection = { ...terrace, site: { ...terrace.site, zone: "UTC" }, pots: [] };
const dayOf = (d: number) => day(new Date(FIRST_UTC_MS + d * 24 * HOUR_MS).toISOString().slice(0, 10));

function weather(): Weather {
  const hourCount = (DAYS + 9) * 24;
  const column = (of: (hour: number) => number) => Float64Array.from({ length: hourCount }, (_, h) => of(h));
  const isWet = (h: number) => Math.floor(h / 24) % 3 !== 0 && h % 24 === 15;
  return {
    startUtcMs: FIRST_UTC_MS,
    hourCount,
    hours: {
      tempC: column(() => 18),
      dewPointC: column(() => 11),
      rainMm: column((h) => (isWet(h) ? 6 : 0)),
      windMPerS: column(() => 2),
      gustMPerS: column(() => 4),
      radiationMjPerM2: column((h) => (h % 24 > 6 && h % 24 < 18 ? 1.5 : 0)),
      cloudFrac: column(() => 0.4),
      weatherCode: column(() => 1),
      feedEt0Mm: column(() => Number.NaN),
      feedRainChanceFrac: column(() => Number.NaN),
    },
    members: null,
    origin: { source: "case", fetchedUtcMs: NOW_UTC_MS - HOUR_MS, credit: "invented" },
  };
}

async function houseWithMornings() {
  const store = await stockedStore({ collection, weather: weather() });
  const outline = plan().days[0]!;
  for (let d = 0; d < DAYS; d++) {
    const issuedUtcMs = FIRST_UTC_MS + (d * 24 + 6) * HOUR_MS;
    const days = [d, d + 1].map((of) => ({ ...outline, day: dayOf(of), rainShareFrac: 0.7 }));
    const issuedAt = new Date(issuedUtcMs).toISOString().replace(":00.000Z", "Z");
    await store.plans.save(plan({ zone: "UTC", issuedAt, forDay: dayOf(d), days, pots: [] }), {
      kind: "morning",
      madeUtcMs: issuedUtcMs,
    });
  }
  return store;
}

describe("what was told is scored with the first plan of a day", () => {
  it("stands in the plan, on the page of today and on that of the sky, as one sentence", async () => {
    const store = await houseWithMornings();
    const siteId = collection.site.id;
    const input = await planInputNow({ store, siteId, nowUtcMs: NOW_UTC_MS }, weather());
    const made = planFromCore(input);
    expect(made.kept?.rain.telling).toMatchObject({ cameTrueFrac: WET_OF_50 / 50, count: 50 });

    await store.pots.put(siteId, { ...terrace.pots[3]! });
    await store.mixes.put(siteId, {
      id: "lean",
      name: "Lean",
      recipe: { kind: "parts", parts: [{ component: "pumice", parts: 1 }] },
    });
    await store.plans.save(made, { kind: "morning", madeUtcMs: NOW_UTC_MS });
    const app = createApp({
      store,
      feed: DEFAULT_FEED_SETTINGS,
      now: () => NOW_UTC_MS,
      replan: async () => null,
    });
    for (const page of ["/", "/sky"])
      expect(await (await app.request(page)).text()).toContain(
        "When it said 70% for rain, it rained 68% of the time, 50 days.",
      );
  });

  it("is carried on by later plans of the day without scoring anew", async () => {
    const store = await houseWithMornings();
    const at = { store, siteId: collection.site.id };
    const first = planFromCore(await planInputNow({ ...at, nowUtcMs: NOW_UTC_MS }, weather()));
    await store.plans.save(first, { kind: "morning", madeUtcMs: NOW_UTC_MS });
    const later = await planInputNow({ ...at, nowUtcMs: NOW_UTC_MS + HOUR_MS }, weather());
    expect(later.told).toBeUndefined();
    expect(planFromCore(later).kept).toEqual(first.kept);
  });
});
