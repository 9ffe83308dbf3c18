import { describe, expect, it } from "vitest";
import { quietUntilUtcMs } from "../../../service/notify/quiet-hours.ts";

const ZONE = "Europe/Berlin";
const NIGHT = { fromHour: 22, toHour: 6.5 };
const until = (quiet: { fromHour: number; toHour: number } | null, local: string) => {
  const at = quietUntilUtcMs(quiet, { nowUtcMs: Date.parse(local), zone: ZONE });
  return at === null ? null : new Date(at).toISOString();
};

describe("quiet hours", () => {
  it("over midnight hold before and after it", () => {
    expect(until(NIGHT, "2031-05-02T21:59+02:00")).toBeNull();
    expect(until(NIGHT, "2031-05-02T22:00+02:00")).toBe("2031-05-03T04:30:00.000Z");
    expect(until(NIGHT, "2031-05-03T06:29+02:00")).toBe("2031-05-03T04:30:00.000Z");
    expect(until(NIGHT, "2031-05-03T06:30+02:00")).toBeNull();
  });

  it("within a day hold on that day", () => {
    expect(until({ fromHour: 13, toHour: 15 }, "2031-05-02T14:00+02:00")).toBe("2031-05-02T13:00:00.000Z");
    expect(until({ fromHour: 13, toHour: 15 }, "2031-05-02T15:00+02:00")).toBeNull();
  });

  it("follow the site's clock through the night on which it changes", () => {
    // Clocks go forward at 02:00 on 30 March 2031: 06:30 comes an hour sooner.
    expect(until(NIGHT, "2031-03-29T23:00+01:00")).toBe("2031-03-30T04:30:00.000Z");
  });

  it("of no length, or none at all, never hold", () => {
    expect(until({ fromHour: 8, toHour: 8 }, "2031-05-02T08:00+02:00")).toBeNull();
    expect(until(null, "2031-05-02T03:00+02:00")).toBeNull();
  });
});
