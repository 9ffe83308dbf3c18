import { describe, expect, it } from "vitest";
import { HOUR_MS } from "../../../core/weather/weather.ts";
import { makePlanNow } from "../../../service/jobs/make-plan-now.ts";
import { planTools } from "../../../service/jobs/plan-tools.ts";
import { barePlan } from "../store/bare-plan.ts";
import { note } from "../store/bench.ts";
import { house } from "./bench-jobs.ts";

const NOW = Date.parse("2031-05-02T03:30Z");

function ask(bench: Awaited<ReturnType<typeof house>>, nowUtcMs = NOW) {
  return { ...planTools(bench.parts), siteId: "yard", nowUtcMs };
}

function message(id: string) {
  const times = { createdUtcMs: NOW, keepTryingUntilUtcMs: NOW + 1 };
  return { id, siteId: "yard", planId: null, channel: "post", subject: "s", body: "b", ...times };
}

describe("making a plan now", () => {
  it("pulls the weather when that is due, plans, and keeps both", async () => {
    const bench = await house();
    const made = await makePlanNow(ask(bench));
    expect(made).toMatchObject({ ok: true, value: { planId: 1, feedProblems: [] } });
    expect(bench.feed.asked).toHaveLength(1);
    expect(await bench.store.plans.latestStored("yard")).toMatchObject({ kind: "asked", weatherPullId: 1 });
    await makePlanNow(ask(bench, NOW + 10 * 60_000));
    expect(bench.feed.asked).toHaveLength(1);
    await makePlanNow(ask(bench, NOW + 4 * HOUR_MS));
    expect(bench.feed.asked).toHaveLength(2);
  });

  it("gives the planner the collection, the journal, the settings and the weather as they are now", async () => {
    const bench = await house();
    await bench.store.journal.append("yard", [note("n1")]);
    await makePlanNow(ask(bench));
    expect(bench.planned[0]).toMatchObject({
      collection: await bench.store.collection("yard"),
      journal: await bench.store.journal.list("yard"),
      settings: await bench.store.settings.get("yard"),
      nowUtcMs: NOW,
    });
    expect(bench.planned[0]?.previous).toBeUndefined();
  });

  it("with the feed down plans from the last good weather, its true age with it", async () => {
    const bench = await house();
    await makePlanNow(ask(bench));
    bench.feed.isDown = true;
    const made = await makePlanNow(ask(bench, NOW + 30 * HOUR_MS));
    expect(made).toMatchObject({ ok: true, value: { feedProblems: [{ code: "feed-refused" }] } });
    expect(bench.planned[1]?.weather.origin.fetchedUtcMs).toBe(NOW);
    expect(bench.planned[1]?.nowUtcMs).toBe(NOW + 30 * HOUR_MS);
  });

  it("without any weather yet says so, with the feed's reason, and keeps nothing", async () => {
    const bench = await house();
    bench.feed.isDown = true;
    expect(await makePlanNow(ask(bench))).toMatchObject({
      ok: false,
      problems: [{ code: "no-weather-yet" }, { code: "feed-refused" }],
    });
    expect(bench.planned).toEqual([]);
    expect(await bench.store.plans.latest("yard")).toBeNull();
  });

  it("for a site that is not there says so", async () => {
    const bench = await house();
    const made = await makePlanNow({ ...ask(bench), siteId: "moon" });
    expect(made).toMatchObject({ ok: false, problems: [{ code: "no-such-site", data: { siteId: "moon" } }] });
  });

  it("replays over hours kept from before the forecast's own past", async () => {
    const bench = await house();
    await makePlanNow(ask(bench));
    await makePlanNow(ask(bench, NOW + 20 * HOUR_MS));
    const [first, second] = bench.planned;
    expect(second?.weather.startUtcMs).toBe(first?.weather.startUtcMs);
    expect(second!.weather.hourCount).toBeGreaterThan(first!.weather.hourCount);
  });

  it("asks for as many past days as have been missed", async () => {
    const bench = await house();
    await makePlanNow(ask(bench));
    await makePlanNow(ask(bench, NOW + 4 * HOUR_MS));
    await makePlanNow(ask(bench, NOW + 10 * 24 * HOUR_MS));
    await makePlanNow(ask(bench, NOW + 300 * 24 * HOUR_MS));
    expect(bench.feed.asked.map(({ pastDays }) => pastDays)).toEqual([60, 3, 12, 92]);
  });

  it("tells changes against what was last told, not against plans made in between", async () => {
    const bench = await house();
    const morning = async () => ({ kind: "morning", messages: [] }) as const;
    await makePlanNow({ ...ask(bench), settle: morning });
    await makePlanNow(ask(bench, NOW + HOUR_MS));
    await makePlanNow(ask(bench, NOW + 2 * HOUR_MS));
    const told = barePlan({ nowUtcMs: NOW });
    expect(bench.planned.map(({ previous }) => previous)).toEqual([undefined, told, told]);
  });

  it("keeps plan and messages together or not at all", async () => {
    const bench = await house();
    const breaks = {
      kind: "morning",
      messages: [message("m1")],
      alongside: async () => {
        throw new Error("power cut");
      },
    } as const;
    await expect(makePlanNow({ ...ask(bench), settle: async () => breaks })).rejects.toThrow("power cut");
    expect(await bench.store.plans.list("yard")).toEqual([]);
    expect(await bench.store.outbox.list("yard")).toEqual([]);
    await makePlanNow({
      ...ask(bench),
      settle: async () => ({ kind: "morning", messages: [message("m1")] }),
    });
    expect(await bench.store.outbox.list("yard")).toMatchObject([{ id: "m1", planId: 1 }]);
  });

  it("adds neither plan nor message to a day that has its morning", async () => {
    const bench = await house();
    const settle = (id: string) => async () => ({ kind: "morning", messages: [message(id)] }) as const;
    await makePlanNow({ ...ask(bench), settle: settle("m1") });
    const again = await makePlanNow({ ...ask(bench, NOW + 60_000), settle: settle("m2") });
    expect(again).toMatchObject({ ok: true, value: { planId: null } });
    expect((await bench.store.outbox.list("yard")).map(({ id }) => id)).toEqual(["m1"]);
  });
});
