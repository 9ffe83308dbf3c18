import { describe, expect, test } from "vitest";
import { DEFAULT_SETTINGS } from "../../../core/plan/settings.ts";
import { dryWindows } from "../../../core/weather/dry-windows.ts";
import type { WeatherReady } from "../../../core/weather/ready.ts";
import { buildReady, buildWeather, SITE } from "./build-weather.ts";

const MEMBERS = 10;
const HOURS = 72;
const MIDNIGHT_UTC_MS = Date.UTC(2026, 5, 8);
const settings = { ...DEFAULT_SETTINGS, dayStartsHour: 8, dayEndsHour: 18 };

/** Three June days from midnight, mild and dry but for the rain that is given by hour and member. */
function readyWith(rainMm: (hour: number, member: number) => number): WeatherReady {
  const flat = (value: number) => new Float64Array(HOURS * MEMBERS).fill(value);
  const ahead = {
    startUtcMs: MIDNIGHT_UTC_MS,
    hourCount: HOURS,
    memberCount: MEMBERS,
    tempC: flat(18),
    dewPointC: flat(10),
    rainMm: Float64Array.from({ length: HOURS * MEMBERS }, (_, i) =>
      rainMm(Math.floor(i / MEMBERS), i % MEMBERS),
    ),
    windMPerS: flat(2),
    radiationMjPerM2: flat(1),
    cloudFrac: flat(0.5),
    gustMPerS: new Float64Array(HOURS).fill(4),
    weatherCode: new Float64Array(HOURS).fill(1),
  };
  return { ...buildReady(buildWeather()), ahead };
}

function clocksOn(day: string, rainMm: (hour: number, member: number) => number): string[] {
  return dryWindows({ ready: readyWith(rainMm), site: SITE, settings })
    .filter(({ from }) => from.startsWith(day))
    .map(({ from, to }) => `${from.slice(11, 13)} to ${to.slice(11, 13)}`);
}

const rainAtTen = (members: number, mm: number) => (hour: number, member: number) =>
  (hour === 10 || hour === 11) && member < members ? mm : 0;

describe("dry windows", () => {
  test("a dry day is one window from the first working hour to the last", () => {
    expect(clocksOn("2026-06-08", () => 0)).toEqual(["08 to 18"]);
  });

  test("rain in all members from ten to twelve cuts it in two", () => {
    expect(clocksOn("2026-06-08", rainAtTen(MEMBERS, 5))).toEqual(["08 to 10", "12 to 18"]);
  });

  test("0.2 mm is wet, less is not", () => {
    expect(clocksOn("2026-06-08", rainAtTen(MEMBERS, 0.2))).toEqual(["08 to 10", "12 to 18"]);
    expect(clocksOn("2026-06-08", rainAtTen(MEMBERS, 0.19))).toEqual(["08 to 18"]);
  });

  test("seven dry members of ten are enough, six are not", () => {
    expect(clocksOn("2026-06-08", rainAtTen(3, 5))).toEqual(["08 to 18"]);
    expect(clocksOn("2026-06-08", rainAtTen(4, 5))).toEqual(["08 to 10", "12 to 18"]);
  });

  test("the share is of members dry throughout, and dry days after it end with the first wet one", () => {
    const twoMembersAtTimes = (hour: number, member: number) =>
      (hour === 9 && member === 0) || (hour === 15 && member === 1) ? 2 : 0;
    const [first] = dryWindows({ ready: readyWith(twoMembersAtTimes), site: SITE, settings });
    expect(first).toMatchObject({ dryShareFrac: 0.8, dryDaysAfter: 2 });
    const wetThirdDay = readyWith((hour) => (hour >= 48 ? 1 : 0));
    const [before] = dryWindows({ ready: wetThirdDay, site: SITE, settings });
    expect(before).toMatchObject({ dryShareFrac: 1, dryDaysAfter: 1 });
  });
});
