import { describe, expect, it } from "vitest";
import { beat } from "../../../service/jobs/beat.ts";
import { briefTiming } from "../../../service/jobs/brief-timing.ts";
import { day } from "../brief/plan-builder.ts";
import { house } from "./bench-jobs.ts";

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

describe("how a brief came", () => {
  const timing = (morningDays: string[], lateUtcMs: number | null = 9) =>
    briefTiming({ forDay: day("2031-03-02"), lateUtcMs, dueUtcMs: 5, morningDays });

  it("on time and after the day before, nothing is said", () => {
    expect(timing(["2031-03-01", "2031-02-28"], null)).toEqual({
      lateUtcMs: null,
      dueUtcMs: 5,
      missedDays: [],
    });
  });

  it("names the days without one, across the end of a month, whatever the order", () => {
    expect(timing(["2031-02-20", "2031-02-26"]).missedDays).toEqual([
      "2031-02-27",
      "2031-02-28",
      "2031-03-01",
    ]);
    expect(timing(["2028-02-28", "2031-03-01"]).missedDays).toEqual([]);
  });

  it("leaves days ahead aside, which a clock that was wrong may have written", () => {
    expect(timing(["2031-03-05", "2031-02-28"]).missedDays).toEqual(["2031-03-01"]);
  });

  it("the first brief of a house is neither late nor missed", () => {
    expect(timing([])).toEqual({ lateUtcMs: null, dueUtcMs: 5, missedDays: [] });
    expect(timing(["2031-03-02"])).toEqual({ lateUtcMs: null, dueUtcMs: 5, missedDays: [] });
  });
});

describe("the message of a morning", () => {
  it("made late after a day without one says both in a line each, and the next one neither", async () => {
    const { parts, clock, delivered } = await house();
    await beat(parts);
    clock.nowUtcMs += 2 * DAY_MS + 3 * HOUR_MS;
    await beat(parts);
    clock.nowUtcMs += DAY_MS - 3 * HOUR_MS;
    await beat(parts);
    const [first, afterGap, next] = delivered.filter(({ id }) => id.includes(".morning."));
    const LATE = "This brief came late: it was made at 08:30 and not at 05:30.";
    const MISSED = "There was no brief on Saturday 3 May.";
    expect(afterGap?.body).toContain(`\n${LATE}\n`);
    expect(afterGap?.body).toContain(`\n${MISSED}\n`);
    for (const other of [first, next]) {
      expect(other?.body).toBeDefined();
      expect(other?.body).not.toMatch(/came late|There was no brief/);
    }
  });

  it("names the first and the last of several days without one", async () => {
    const { parts, clock, delivered } = await house();
    await beat(parts);
    clock.nowUtcMs += 4 * DAY_MS;
    await beat(parts);
    expect(delivered.at(-1)?.body).toContain("There was no brief from Saturday 3 May to Monday 5 May.");
    expect(delivered.at(-1)?.body).not.toContain("came late");
  });
});
