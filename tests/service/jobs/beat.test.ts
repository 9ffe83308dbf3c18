import { describe, expect, it } from "vitest";
import { beat } from "../../../service/jobs/beat.ts";
import { barePlan } from "../store/bare-plan.ts";
import { site } from "../store/bench.ts";
import { emptyStore } from "../store/test-store.ts";
import { house } from "./bench-jobs.ts";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;

describe("a heartbeat", () => {
  it("in the morning makes the brief and delivers it, once", async () => {
    const { parts, clock, delivered, feed } = await house();
    for (let minute = 0; minute < 5; minute++) {
      await beat(parts);
      clock.nowUtcMs += MINUTE_MS;
    }
    expect(delivered).toHaveLength(1);
    expect(feed.asked).toHaveLength(1);
    expect(delivered[0]?.subject).toBe("Friday 2 May at Yard");
    expect(delivered[0]?.body).toContain("Friday 2 May at Yard");
    expect(delivered[0]?.id).toMatch(/^2031-05-02\.morning\.post\./);
  });

  it("in an empty house does nothing", async () => {
    const store = await emptyStore();
    const bench = await house({ store });
    store.raw.exec("PRAGMA foreign_keys = OFF");
    for (const table of ["spot", "mix", "pot", "site"]) store.raw.exec(`DELETE FROM ${table}`);
    await beat(bench.parts);
    expect(bench.feed.asked).toEqual([]);
    expect(bench.delivered).toEqual([]);
    expect(bench.logged).toEqual([]);
  });

  it("goes on after a planner that broke, tells so, and makes the brief when it is well again", async () => {
    const { parts, clock, delivered, logged, planner } = await house();
    const well = planner.make;
    planner.make = () => {
      throw new RangeError("waterMl is NaN");
    };
    await beat(parts);
    expect(logged).toContainEqual(expect.objectContaining({ event: "job-broke", job: "morning" }));
    planner.make = well;
    clock.nowUtcMs += MINUTE_MS;
    await beat(parts);
    expect(delivered).toHaveLength(1);
  });

  it("one site's trouble leaves the other's morning alone", async () => {
    const { parts, store, planner, delivered } = await house();
    await store.sites.put(site({ id: "attic" }));
    const well = planner.make;
    planner.make = (input) => {
      if (input.collection.site.id === "attic") throw new Error("no");
      return well(input);
    };
    await beat(parts);
    expect(delivered).toHaveLength(1);
  });

  it("marks a morning late that was missed", async () => {
    const { parts, store, clock } = await house();
    clock.nowUtcMs += 3 * HOUR_MS;
    await beat(parts);
    expect(await store.plans.latestStored("yard", ["morning"])).toMatchObject({ late: true });
    expect(await store.runs.latest("morning", "yard")).toMatchObject([{ outcome: "done", late: true }]);
  });

  it("without weather waits longer between tries, and makes the brief when the feed is back", async () => {
    const { parts, clock, feed, delivered } = await house();
    feed.isDown = true;
    for (let minute = 0; minute < 120; minute++) {
      await beat(parts);
      clock.nowUtcMs += MINUTE_MS;
    }
    expect(delivered).toEqual([]);
    // Manners of the feed: 2, 4, 8 ... 60 minutes, each up to half longer.
    expect(feed.asked.length).toBeGreaterThan(3);
    expect(feed.asked.length).toBeLessThan(9);
    feed.isDown = false;
    for (let minute = 0; minute < 100; minute++) {
      await beat(parts);
      clock.nowUtcMs += MINUTE_MS;
    }
    expect(delivered).toHaveLength(1);
  });
});

describe("the day watch at work", () => {
  const FROST = {
    potId: "p1",
    action: "carry-in",
    harmAvoided: 0.4,
    by: "2031-05-02T18:00Z",
    toSpotId: "steps",
  } as const;

  it("sends one amendment when a later forecast turns urgent, plan and message together", async () => {
    const { parts, store, clock, planner, delivered } = await house();
    await beat(parts);
    planner.make = ({ nowUtcMs, previous }) => ({
      ...barePlan({ nowUtcMs, deeds: [FROST] }),
      changesSince: previous ? [{ potId: "p1", was: "none", is: "carry-in", because: "weather" }] : [],
    });
    for (let minute = 0; minute < 8 * 60; minute += 10) {
      clock.nowUtcMs += 10 * MINUTE_MS;
      await beat(parts);
    }
    expect(delivered.map(({ id }) => id.split(".")[1])).toEqual(["morning", "amendment-1"]);
    expect(delivered[1]?.subject).toBe("Changed for Friday 2 May, Yard");
    expect(delivered[1]?.body.indexOf("Lemon")).toBeGreaterThan(0);
    const kinds = (await store.plans.list("yard")).map(({ kind }) => kind).reverse();
    expect(kinds.slice(0, 2)).toEqual(["morning", "amendment"]);
    expect(new Set(kinds.slice(2))).toEqual(new Set(["watch"]));
  });

  it("begins anew the next morning", async () => {
    const { parts, clock, planner, delivered } = await house();
    planner.make = ({ nowUtcMs }) => barePlan({ nowUtcMs, deeds: [FROST] });
    await beat(parts);
    clock.nowUtcMs += 24 * HOUR_MS;
    await beat(parts);
    for (let minute = 0; minute < 8 * 60; minute += 10) {
      clock.nowUtcMs += 10 * MINUTE_MS;
      await beat(parts);
    }
    expect(delivered.map(({ id }) => id.split(".").slice(0, 2).join(" "))).toEqual([
      "2031-05-02 morning",
      "2031-05-03 morning",
    ]);
  });

  it("before the day's morning only keeps the newest plan", async () => {
    const { parts, store, clock, delivered } = await house();
    clock.nowUtcMs -= 5 * HOUR_MS;
    await beat(parts);
    expect(delivered).toEqual([]);
    expect(await store.plans.latestStored("yard")).toMatchObject({ kind: "asked" });
  });
});
