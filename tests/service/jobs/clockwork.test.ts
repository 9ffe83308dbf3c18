import { describe, expect, it } from "vitest";
import { clockworkFaults, expectedDays } from "../../drills/clockwork-faults.ts";
import { liveThrough, type SimulatedTime } from "../../drills/simulated-time.ts";

/** The short form of tests/drills/clockwork.ts: some weeks around both clock changes, at a slower heartbeat. */
const SPRING: SimulatedTime = {
  fromUtcMs: Date.parse("2028-03-22T12:00Z"),
  toUtcMs: Date.parse("2028-04-12T12:00Z"),
  beatMs: 20 * 60_000,
  // Berlin goes forward on 26 March, Adelaide and Santiago back on 2 April 2028.
  zones: ["Europe/Berlin", "Australia/Adelaide", "America/Santiago"],
  restarts: 6,
  longestDownMs: 9 * 3_600_000,
  feedDown: { fromUtcMs: Date.parse("2028-04-04T01:00Z"), toUtcMs: Date.parse("2028-04-07T01:00Z") },
  deliveryFailsFrac: 0.1,
  briefAtHour: 5.5,
  seed: 3,
};

describe("a lived-through time", () => {
  it("has one brief each local day at its hour, through clock changes, restarts and an outage of the feed", async () => {
    const run = await liveThrough(SPRING);
    expect(SPRING.zones.map((zone) => expectedDays(SPRING, zone).size)).toEqual([20, 21, 20]);
    expect(clockworkFaults(SPRING, run)).toEqual([]);
    expect(run.brokenJobs).toBe(0);
    expect(run.pullsRefused).toBeGreaterThan(0);
    const oldest = Math.max(...run.mornings.map(({ weatherAgeHours }) => weatherAgeHours));
    expect(oldest).toBeGreaterThan(48);
    expect(oldest).toBeLessThan(76);
  });

  it("would be caught with a morning lost, doubled, early or wrongly marked", async () => {
    const week = {
      ...SPRING,
      toUtcMs: Date.parse("2028-03-25T12:00Z"),
      restarts: 1,
      zones: ["Asia/Kolkata"],
    };
    const run = await liveThrough(week);
    const [first, ...rest] = run.mornings.filter(({ day }) => expectedDays(week, "Asia/Kolkata").has(day));
    const faults = (mornings: typeof run.mornings) => clockworkFaults(week, { ...run, mornings });
    expect(faults(run.mornings)).toEqual([]);
    expect(rest).toHaveLength(2);
    expect(faults(rest)).toHaveLength(1);
    expect(faults([first!, first!, ...rest])).toHaveLength(1);
    expect(faults([{ ...first!, madeUtcMs: first!.madeUtcMs - 3_600_000 }, ...rest]).length).toBeGreaterThan(
      0,
    );
    expect(faults([{ ...first!, late: !first!.late }, ...rest])).toHaveLength(1);
    expect(clockworkFaults(week, { ...run, delivered: [] })).toHaveLength(3);
  });
});
