import { expect, test } from "vitest";
import { doubtedOf } from "../../../core/plan/trouble/doubted.ts";
import type { DoubtData } from "../../../core/pot/learn/observe.ts";
import { HOUR_MS } from "../../../core/weather/weather.ts";

const DAY_MS = 24 * HOUR_MS;
const NOW_UTC_MS = Date.UTC(2027, 4, 10, 6);

function doubt(id: string, daysAgo: number, data: Partial<DoubtData> = {}) {
  const whole: DoubtData = {
    kind: "weighed",
    atUtcMs: NOW_UTC_MS - daysAgo * DAY_MS,
    seen: 9,
    expected: { low: 6.12345, mid: 6.5, high: 7 },
    wetter: true,
    question: "water-not-noted",
    ...data,
  };
  return { code: "does-not-fit", path: ["journal", id], data: { ...whole } };
}

test("tells what of late did not fit and what to ask, the expected in the unit of the look", () => {
  const doubts = [
    doubt("old", 31),
    doubt("scale", 3),
    doubt("jug", 2, { kind: "watered", question: "ran-past-dry-mix" }),
    doubt("hand", 1, { kind: "checked", seen: Number.NaN, wetter: false, question: "look-closer" }),
    { code: "no-such-mix", path: ["journal", "planted"] },
  ];
  expect(doubtedOf({ doubts, plantedUtcMs: null }, NOW_UTC_MS)).toEqual([
    {
      entryId: "scale",
      notedAt: "2027-05-07T06:00Z",
      expected: { unit: "kg", low: 6.123, high: 7 },
      wetter: true,
      question: "water-not-noted",
    },
    {
      entryId: "jug",
      notedAt: "2027-05-08T06:00Z",
      expected: { unit: "ml", low: 6.123, high: 7 },
      wetter: true,
      question: "ran-past-dry-mix",
    },
    { entryId: "hand", notedAt: "2027-05-09T06:00Z", wetter: false, question: "look-closer" },
  ]);
});

test("asks nothing more once the pot was planted anew", () => {
  const plantedUtcMs = NOW_UTC_MS - 2 * DAY_MS;
  const left = doubtedOf({ doubts: [doubt("before", 3), doubt("after", 1)], plantedUtcMs }, NOW_UTC_MS);
  expect(left.map(({ entryId }) => entryId)).toEqual(["after"]);
});
