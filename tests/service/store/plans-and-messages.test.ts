import { describe, expect, it } from "vitest";
import { barePlan } from "./bare-plan.ts";
import { fill, site } from "./bench.ts";
import { someWeather } from "./some-weather.ts";
import { emptyStore } from "./test-store.ts";

const NOW = Date.parse("2031-05-02T04:00Z");
const DAY_MS = 86_400_000;

async function filled() {
  const store = await emptyStore();
  await fill(store);
  return store;
}

function message(id: string, over: { createdUtcMs?: number; planId?: number | null } = {}) {
  const { createdUtcMs = NOW, planId = null } = over;
  const words = { channel: "log", subject: "Today", body: "Water the lemon." };
  return { id, siteId: "yard", planId, ...words, createdUtcMs, keepTryingUntilUtcMs: createdUtcMs + DAY_MS };
}

describe("kept plans", () => {
  it("have one morning a site and day, the first", async () => {
    const store = await filled();
    await fill(store, site({ id: "roof" }));
    const how = { kind: "morning", madeUtcMs: NOW } as const;
    const id = await store.plans.save(barePlan(), how);
    expect(id).toBeTypeOf("number");
    expect(await store.plans.save(barePlan({ nowUtcMs: NOW + 60_000 }), how)).toBeNull();
    expect(await store.plans.save(barePlan(), { ...how, kind: "asked" })).toBeTypeOf("number");
    expect(await store.plans.save(barePlan({ siteId: "roof" }), how)).toBeTypeOf("number");
    expect(await store.plans.save(barePlan({ nowUtcMs: NOW + DAY_MS }), how)).toBeTypeOf("number");
    expect(await store.plans.morningDays("yard")).toEqual(["2031-05-03", "2031-05-02"]);
  });

  it("come back newest first, by kind where asked", async () => {
    const store = await filled();
    expect(await store.plans.latest("yard")).toBeNull();
    const pull = await store.weather.save("yard", someWeather());
    const morning = barePlan();
    const asked = barePlan({ nowUtcMs: NOW + 3_600_000 });
    await store.plans.save(morning, { kind: "morning", madeUtcMs: NOW, late: true, weatherPullId: pull });
    await store.plans.save(asked, { kind: "asked", madeUtcMs: NOW + 3_600_000 });
    expect(await store.plans.latest("yard")).toEqual(asked);
    expect(await store.plans.latestStored("yard", ["morning", "amendment"])).toMatchObject({
      kind: "morning",
      late: true,
      weatherPullId: pull,
      plan: morning,
    });
    expect((await store.plans.list("yard")).map(({ kind }) => kind)).toEqual(["asked", "morning"]);
  });
});

describe("the outbox", () => {
  it("takes a message of the same id once", async () => {
    const store = await filled();
    expect(await store.outbox.add([message("m1"), message("m2")])).toBe(2);
    expect(await store.outbox.add([message("m1"), message("m3")])).toBe(1);
    expect(await store.outbox.add([])).toBe(0);
    expect(await store.outbox.counts()).toEqual({ waiting: 3, sent: 0, "given-up": 0 });
  });

  it("hands out what is due, oldest first, and never what is settled", async () => {
    const store = await filled();
    await store.outbox.add([
      message("b", { createdUtcMs: NOW + 2 }),
      message("a", { createdUtcMs: NOW + 1 }),
      message("c"),
    ]);
    const due = async (at: number) => (await store.outbox.due(at)).map(({ id }) => id);
    expect(await due(NOW - 1)).toEqual([]);
    expect(await due(NOW + 5)).toEqual(["c", "a", "b"]);
    await store.outbox.markSent("c", NOW + 6);
    await store.outbox.markFailed("a", { fault: "mail-etimedout", nextTryUtcMs: NOW + 100 });
    await store.outbox.markGivenUp("b", { fault: "mail-550", atUtcMs: NOW + 7 });
    expect(await due(NOW + 50)).toEqual([]);
    expect(await store.outbox.due(NOW + 100)).toMatchObject([
      { id: "a", tries: 1, lastFault: "mail-etimedout" },
    ]);
    await store.outbox.markFailed("c", { fault: "too late", nextTryUtcMs: NOW });
    expect(await store.outbox.counts()).toEqual({ waiting: 1, sent: 1, "given-up": 1 });
  });
});

describe("notes of jobs", () => {
  it("come newest first as written, whatever the clock said", async () => {
    const store = await filled();
    const run = (slot: string, startedUtcMs: number, siteId?: string) => ({
      ...(siteId === undefined ? {} : { siteId }),
      job: "morning" as const,
      slot,
      startedUtcMs,
      endedUtcMs: startedUtcMs,
      outcome: "done" as const,
      late: false,
      detail: "",
    });
    await store.runs.add(run("2031-05-02", NOW, "yard"));
    await store.runs.add(run("2031-05-01", NOW - DAY_MS, "yard"));
    await store.runs.add(run("whole service", NOW));
    expect((await store.runs.latest("morning", "yard")).map(({ slot }) => slot)).toEqual([
      "2031-05-01",
      "2031-05-02",
    ]);
    expect((await store.runs.latest("morning")).map(({ slot }) => slot)).toEqual(["whole service"]);
  });
});

describe("keeping times", () => {
  it("let go of what is old, but never of the journal, the hours gone by, or what was told", async () => {
    const store = await filled();
    const startUtcMs = (days: number) => NOW - days * DAY_MS;
    const save = (days: number) =>
      store.weather.save(
        "yard",
        someWeather({ startUtcMs: startUtcMs(days), hourCount: 24, fetchedUtcMs: startUtcMs(days - 1) }),
      );
    const pulls = [await save(900), await save(60), await save(50), await save(20), await save(1)] as const;
    const plan = async (days: number, kind: "morning" | "asked", weatherPullId: number) =>
      store.plans.save(barePlan({ nowUtcMs: startUtcMs(days) }), {
        kind,
        madeUtcMs: startUtcMs(days),
        weatherPullId,
      });
    const veryOld = await plan(899, "morning", pulls[0]);
    const told = await plan(59, "morning", pulls[1]);
    await plan(49, "asked", pulls[2]);
    const recent = await plan(1, "asked", pulls[4]);
    await store.outbox.add([
      message("gone", { planId: veryOld, createdUtcMs: startUtcMs(899) }),
      message("waits", { createdUtcMs: startUtcMs(899) }),
    ]);
    await store.outbox.markSent("gone", NOW);
    const basis = {
      collection: await store.collection("yard"),
      settings: await store.settings.get("yard"),
      journalSeq: 1,
      previousPlanId: null,
    };
    for (const id of [veryOld, told]) await store.planInputs.save(id!, basis);
    await store.weather.save(
      "yard",
      someWeather({
        startUtcMs: startUtcMs(900),
        hourCount: 24,
        fetchedUtcMs: startUtcMs(0),
        value: () => 5,
      }),
    );
    const corrected = () => store.raw.prepare("SELECT count(*) FROM past_hour_before").pluck().get();
    expect(corrected()).toBe(24);
    const hoursBefore = store.raw.prepare("SELECT count(*) FROM past_hour").pluck().get();

    const gone = await store.letGoOfOld({ nowUtcMs: NOW, weatherDays: 90, planDays: 365 });

    expect(gone).toEqual({ messages: 1, plans: 2, pulls: 3, runs: 0 });
    expect((await store.plans.list("yard")).map(({ id }) => id)).toEqual([recent, told]);
    const kept = store.raw.prepare("SELECT id FROM weather_pull ORDER BY id").pluck().all();
    expect(kept).toEqual([pulls[1], pulls[4], pulls[4] + 1]);
    expect(await store.planInputs.get(veryOld!)).toBeNull();
    expect(await store.planInputs.get(told!)).toMatchObject(basis);
    expect(corrected(), "a forecast from before the correction is kept").toBe(24);
    expect(store.raw.prepare("SELECT count(*) FROM past_hour").pluck().get()).toBe(hoursBefore);
    expect(await store.journal.list("yard")).toHaveLength(1);
    expect((await store.outbox.list("yard")).map(({ id }) => id)).toEqual(["waits"]);

    expect(await store.letGoOfOld({ nowUtcMs: NOW, weatherDays: 30, planDays: 365 })).toMatchObject({
      plans: 0,
      pulls: 1,
    });
    expect(await store.plans.latestStored("yard", ["morning"])).toMatchObject({
      id: told,
      weatherPullId: null,
    });
  });

  it("keep the newest forecast and the newest plan of a site however old they are", async () => {
    const store = await filled();
    const weatherPullId = await store.weather.save(
      "yard",
      someWeather({ fetchedUtcMs: NOW - 4000 * DAY_MS }),
    );
    await store.plans.save(barePlan(), { kind: "asked", madeUtcMs: NOW - 4000 * DAY_MS, weatherPullId });
    await store.letGoOfOld({ nowUtcMs: NOW, weatherDays: 2, planDays: 31 });
    expect(await store.weather.latest("yard")).not.toBeNull();
    expect(await store.plans.latest("yard")).not.toBeNull();
  });
});
