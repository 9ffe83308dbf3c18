import { describe, expect, it } from "vitest";
import { beat } from "../../../service/jobs/beat.ts";
import { house } from "./bench-jobs.ts";

const MINUTE_MS = 60_000;
const HOUR_MS = 60 * MINUTE_MS;
const DAY_MS = 24 * HOUR_MS;

async function bench() {
  const made = await house();
  const live = async (ms: number) => {
    const untilUtcMs = made.clock.nowUtcMs + ms;
    for (; made.clock.nowUtcMs < untilUtcMs; made.clock.nowUtcMs += 10 * MINUTE_MS) await beat(made.parts);
  };
  const mornings = async () =>
    (await made.store.plans.list("yard", 1000))
      .filter(({ kind }) => kind === "morning")
      .map(({ plan, late }) => `${plan.forDay}${late ? " late" : ""}`)
      .sort();
  return { ...made, live, mornings };
}

describe("a clock that jumps", () => {
  it("back over the morning, as when it is put right, doubles nothing", async () => {
    const { live, clock, mornings, delivered } = await bench();
    await live(HOUR_MS);
    clock.nowUtcMs -= 2 * HOUR_MS;
    await live(4 * HOUR_MS);
    expect(await mornings()).toEqual(["2031-05-02"]);
    expect(delivered).toHaveLength(1);
  });

  it("back over midnight doubles nothing either", async () => {
    const { live, clock, mornings, delivered } = await bench();
    await live(HOUR_MS);
    clock.nowUtcMs -= DAY_MS;
    await live(DAY_MS + HOUR_MS);
    // The day before had none yet, so it gets its own.
    expect(await mornings()).toEqual(["2031-05-01 late", "2031-05-02"]);
    expect(delivered).toHaveLength(2);
  });

  it("forward, as when a lid was closed for three days, gives the day it wakes on its brief, late", async () => {
    const { live, clock, mornings, feed } = await bench();
    await live(HOUR_MS);
    clock.nowUtcMs += 3 * DAY_MS + 2 * HOUR_MS;
    await live(HOUR_MS);
    expect(await mornings()).toEqual(["2031-05-02", "2031-05-05 late"]);
    expect(feed.asked.at(-1)?.pastDays).toBeGreaterThanOrEqual(5);
  });

  it("a year ahead and back again loses no later day and goes on pulling", async () => {
    const { live, clock, mornings, feed } = await bench();
    await live(HOUR_MS);
    clock.nowUtcMs += 365 * DAY_MS;
    await live(HOUR_MS);
    clock.nowUtcMs -= 365 * DAY_MS;
    const asked = feed.asked.length;
    await live(2 * DAY_MS);
    expect(await mornings()).toEqual(["2031-05-02", "2031-05-03", "2031-05-04", "2032-05-01 late"]);
    expect(feed.asked.length - asked).toBeGreaterThanOrEqual(12);
  });
});
