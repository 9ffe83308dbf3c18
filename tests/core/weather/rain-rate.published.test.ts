import { expect, it } from "vitest";
import { rainRate } from "../../../core/weather/rain-rate.ts";

/** [AMSRAIN] read in source: light up to 2.5 mm/h, moderate 2.6 to 7.6, heavy beyond. */
const CLASSES = [
  { mmPerH: 0.3, word: "light" },
  { mmPerH: 2.5, word: "light" },
  { mmPerH: 2.6, word: "moderate" },
  { mmPerH: 7.6, word: "moderate" },
  { mmPerH: 7.7, word: "heavy" },
  { mmPerH: 60, word: "heavy" },
] as const;

it.each(CLASSES)("$mmPerH mm in an hour is $word", ({ mmPerH, word }) => {
  expect(rainRate(mmPerH)).toBe(word);
});
