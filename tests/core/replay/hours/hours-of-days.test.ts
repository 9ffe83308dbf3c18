import { describe, expect, it } from "vitest";
import { dayAxis } from "../../../../core/replay/hours/day-axis.ts";
import { hoursOfDays } from "../../../../core/replay/hours/hours-of-days.ts";
import type { CalendarDay } from "../../../../core/site/site.ts";
import { SITE, someDays } from "./some-days.ts";

describe("hours of days", () => {
  it("differ by seed, while the temperatures stay", () => {
    const days = someDays(20, { rainMm: new Float64Array(20).fill(6) });
    const one = hoursOfDays(days, 1);
    const two = hoursOfDays(days, 2);
    expect(one.rainMm).not.toEqual(two.rainMm);
    expect(one.windMPerS).not.toEqual(two.windMPerS);
    expect(one.tempC).toEqual(two.tempC);
  });

  it("do not move when days are added behind them", () => {
    const days = someDays(20, { rainMm: new Float64Array(20).fill(6) });
    const more = someDays(30, { rainMm: new Float64Array(30).fill(6) });
    const hours = 19 * 24;
    expect(hoursOfDays(more, 4).rainMm.slice(0, hours)).toEqual(hoursOfDays(days, 4).rainMm.slice(0, hours));
  });

  it("are coldest about sunrise and warmest after noon", () => {
    const { tempC } = hoursOfDays(someDays(3, { firstDay: "2013-06-20" as CalendarDay }), 1);
    const day = Array.from(tempC.subarray(24, 48));
    // Sunrise at 5:11 and noon at 13:11 by the clock at 47.5 N, 122.3 W in the week of midsummer.
    expect([4, 5]).toContain(day.indexOf(Math.min(...day)));
    expect([14, 15]).toContain(day.indexOf(Math.max(...day)));
  });

  it("are gloomier in wet hours of a wet day", () => {
    const { rainMm, radiationMjPerM2 } = hoursOfDays(
      someDays(200, { rainMm: new Float64Array(200).fill(8) }),
      3,
    );
    const mean = (wet: boolean) => {
      const hours = Array.from(rainMm.keys()).filter((hour) => rainMm[hour]! >= 0.25 === wet);
      return hours.reduce((total, hour) => total + radiationMjPerM2[hour]!, 0) / hours.length;
    };
    expect(mean(true)).toBeLessThan(0.8 * mean(false));
  });

  it("are whole days of 24 where clocks are off by half an hour", () => {
    const { days, hourCount } = dayAxis({ ...SITE, zone: "Asia/Kolkata" }, "2013-06-20" as CalendarDay, 3);
    expect(hourCount).toBe(72);
    expect(days.map(({ day, fromHour, toHour }) => [day, toHour - fromHour])).toEqual([
      ["2013-06-20", 24],
      ["2013-06-21", 24],
      ["2013-06-22", 24],
    ]);
  });
});
