import { describe, expect, it } from "vitest";
import { type Due, dueNow, type ServiceRuns, type SiteRuns } from "../../../service/jobs/due.ts";

const NEVER = Number.MAX_SAFE_INTEGER;
const MINUTE_MS = 60_000;

function site(over: Partial<SiteRuns> = {}): SiteRuns {
  const nowhereNear = Date.parse("2031-05-02T09:00Z");
  return {
    siteId: "yard",
    zone: "Europe/Berlin",
    hasPots: true,
    morningDays: [],
    failedMornings: [],
    pullDueUtcMs: nowhereNear,
    ...over,
  };
}

const QUIET_NIGHT: ServiceRuns = { nights: [{ slot: "2031-05-02", outcome: "done", startedUtcMs: 0 }] };

function due(now: string, over: Partial<SiteRuns> = {}, service: ServiceRuns = QUIET_NIGHT): Due[] {
  const [nowUtcMs, briefAtHour] = [Date.parse(now), 5.5];
  return dueNow({ nowUtcMs, sites: [site(over)], service, briefAtHour });
}

const MORNING = { job: "morning", siteId: "yard", slot: "2031-05-02", late: false };

describe("the morning", () => {
  // Berlin in May: UTC + 2.
  it("is due from its local hour on", () => {
    expect(due("2031-05-02T03:29:59Z")).toEqual([]);
    expect(due("2031-05-02T03:30:00Z")).toEqual([MORNING]);
  });

  it("is not due while no pot is entered", () => {
    expect(due("2031-05-02T03:30Z", { hasPots: false })).toEqual([]);
    expect(due("2031-05-02T08:10Z", { hasPots: false })).toEqual([]);
  });

  it("is not due on a day that has one", () => {
    expect(due("2031-05-02T03:30Z", { morningDays: ["2031-05-02", "2031-05-01"] })).toEqual([]);
  });

  it("missed while nothing ran is made at the start, once, and called late", () => {
    expect(due("2031-05-02T08:10Z")).toEqual([{ ...MORNING, late: true }]);
    expect(due("2031-05-02T08:10Z", { morningDays: ["2031-05-02"] })).toEqual([]);
    expect(due("2031-05-02T03:45:00Z")[0]).toEqual(MORNING);
    expect(due("2031-05-02T03:45:01Z")[0]).toEqual({ ...MORNING, late: true });
  });

  it("of a day that is wholly over is not made up for", () => {
    expect(due("2031-05-02T01:00Z", { morningDays: ["2031-04-30"] })).toEqual([]);
  });

  it("is not doubled when the clock is set back over it, nor lost when it was wrong by years", () => {
    expect(due("2031-05-02T03:10Z", { morningDays: ["2031-05-02"] })).toEqual([]);
    expect(due("2031-05-02T03:40Z", { morningDays: ["2031-05-02"] })).toEqual([]);
    expect(due("2031-05-02T03:40Z", { morningDays: ["2041-01-01"] })).toEqual([MORNING]);
  });

  it("that failed is tried again after 1, 2, 4 ... 15 minutes", () => {
    const failedAt = (count: number) =>
      Array.from({ length: count }, () => ({
        slot: "2031-05-02",
        startedUtcMs: Date.parse("2031-05-02T03:30Z"),
      }));
    const after = (minutes: number, failures: number) =>
      due(new Date(Date.parse("2031-05-02T03:30Z") + minutes * MINUTE_MS).toISOString(), {
        failedMornings: failedAt(failures),
      }).length;
    expect([after(0, 1), after(1, 1)]).toEqual([0, 1]);
    expect([after(1, 2), after(2, 2)]).toEqual([0, 1]);
    expect([after(3, 3), after(4, 3)]).toEqual([0, 1]);
    expect([after(14, 12), after(15, 12)]).toEqual([0, 1]);
  });

  it("that failed yesterday, or in the future of a clock put back, is not waited for", () => {
    const yesterday = [{ slot: "2031-05-01", startedUtcMs: Date.parse("2031-05-02T03:29Z") }];
    const future = [{ slot: "2031-05-02", startedUtcMs: Date.parse("2031-05-02T09:00Z") }];
    expect(due("2031-05-02T03:30Z", { failedMornings: yesterday })).toEqual([MORNING]);
    expect(due("2031-05-02T03:30Z", { failedMornings: future })).toEqual([MORNING]);
  });

  it("comes once when clocks go forward over its hour, and once when they show it twice", () => {
    // Berlin, 30 March 2031: 02:00 to 03:00 is skipped. 26 October 2031: 02:00 to 03:00 comes twice.
    const at = (now: string, morningDays: string[] = []) =>
      dueNow({
        nowUtcMs: Date.parse(now),
        sites: [site({ morningDays, pullDueUtcMs: Date.parse(now) + MINUTE_MS })],
        service: {
          nights: ["2031-03-30", "2031-10-26"].map((slot) => ({ slot, outcome: "done", startedUtcMs: 0 })),
        },
        briefAtHour: 2.5,
      }).map(({ slot }) => slot);
    expect(at("2031-03-30T00:59Z")).toEqual([]);
    expect(at("2031-03-30T01:30Z")).toEqual(["2031-03-30"]);
    expect(at("2031-10-26T00:29Z")).toEqual([]);
    expect(at("2031-10-26T00:30Z")).toEqual(["2031-10-26"]);
    expect(at("2031-10-26T01:30Z", ["2031-10-26"])).toEqual([]);
  });

  it("of several sites comes at each one's own hour", () => {
    const zones = { tromso: "Europe/Oslo", kolkata: "Asia/Kolkata", auckland: "Pacific/Auckland" };
    const sites = Object.entries(zones).map(([siteId, zone]) =>
      site({ siteId, zone, pullDueUtcMs: NEVER / 4 }),
    );
    const at = (now: string) =>
      dueNow({ nowUtcMs: Date.parse(now), sites, service: QUIET_NIGHT, briefAtHour: 5.5 })
        .filter(({ job }) => job === "morning")
        .map(({ siteId, slot, late }) => `${siteId} ${slot}${late ? " late" : ""}`);
    // 05:30 in Auckland (UTC + 12 in May), in Kolkata (UTC + 5:30), in Oslo (UTC + 2), whatever the sun does.
    expect(at("2031-05-01T17:30Z")).toEqual([
      "tromso 2031-05-01 late",
      "kolkata 2031-05-01 late",
      "auckland 2031-05-02",
    ]);
    expect(at("2031-05-02T00:00Z")).toEqual(["kolkata 2031-05-02", "auckland 2031-05-02 late"]);
  });
});

describe("the pull", () => {
  it("is due when the feed's manners want it", () => {
    const pullDueUtcMs = Date.parse("2031-05-02T02:10Z");
    expect(due("2031-05-02T02:09Z", { pullDueUtcMs })).toEqual([]);
    expect(due("2031-05-02T02:10Z", { pullDueUtcMs })).toEqual([
      { job: "pull", siteId: "yard", slot: "", late: false },
    ]);
  });

  it("is not put off by a date written before a clock was set back", () => {
    expect(due("2031-05-02T02:10Z", { pullDueUtcMs: Date.parse("2031-05-04T00:00Z") })).toHaveLength(1);
  });

  it("comes after the morning, which asks by itself", () => {
    const both = due("2031-05-02T03:30Z", { pullDueUtcMs: 0 });
    expect(both.map(({ job }) => job)).toEqual(["morning", "pull"]);
  });
});

describe("the night's work", () => {
  const night = (now: string, nights: ServiceRuns["nights"] = []) =>
    due(now, { morningDays: ["2031-05-02"], pullDueUtcMs: Date.parse(now) + MINUTE_MS }, { nights });

  it("is due at half past two in the zone of the first site, late when missed", () => {
    expect(night("2031-05-02T00:29Z")).toEqual([]);
    expect(night("2031-05-02T00:30Z")).toEqual([
      { job: "nightly", siteId: null, slot: "2031-05-02", late: false },
    ]);
    expect(night("2031-05-02T07:00Z")).toMatchObject([{ job: "nightly", late: true }]);
  });

  it("is done once a night, and tried again an hour after it failed", () => {
    const tried = (outcome: "done" | "failed") => [
      { slot: "2031-05-02", outcome, startedUtcMs: Date.parse("2031-05-02T00:30Z") },
    ];
    expect(night("2031-05-02T20:00Z", tried("done"))).toEqual([]);
    expect(night("2031-05-02T01:29Z", tried("failed"))).toEqual([]);
    expect(night("2031-05-02T01:30Z", tried("failed"))).toHaveLength(1);
  });

  it("is not done in a house where nothing has been entered yet", () => {
    const nowUtcMs = Date.parse("2031-05-02T02:30Z");
    expect(dueNow({ nowUtcMs, sites: [], service: { nights: [] }, briefAtHour: 5.5 })).toEqual([]);
  });
});
