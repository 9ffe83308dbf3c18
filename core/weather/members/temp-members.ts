import type { MinimumBias } from "../instruments/minimum-bias.ts";
import { seedFrom } from "../seeded-random.ts";
import { addBetweenAnchors, temperatureAnchors } from "./anchors.ts";
import { ensembleCourse, missingSd } from "./ensemble-course.ts";
import { ERROR_STREAM, evenNormals } from "./error-draws.ts";
import type { MemberFrame } from "./member-frame.ts";

/** Correlation of the errors of maximum and minimum of a day: 0.21 to 0.36 in five cities. [NWSCITIES2022] */
const MAX_WITH_MIN = 0.3;

/**
 * Steady difference between forecast and place, °C, before the grower's thermometer has told anything. Chosen by us:
 * station differences of a raw model were 1.1 for the maximum and 1.5 for the minimum over 27 Spanish stations
 * (our reckoning from open data), of which the feed's correction for height takes a part.
 */
export const PLACE_SD_C = { max: 0.7, min: 1 } as const;

/**
 * Temperature by member: its course, plus the error that published scores say is missing from its spread, drawn out
 * between the coldest and the warmest hour of each day, plus one steady difference of the place for each member.
 */
export function tempMembersC(frame: MemberFrame, bias: MinimumBias): Float64Array {
  const { column, spreadByDay } = ensembleCourse(frame, "tempC");
  const { size, seed } = frame;
  const atAnchor = new Float64Array(2 * frame.days.length * size);
  const placeMin = evenNormals(seedFrom([seed, ERROR_STREAM.bias, ERROR_STREAM.tempMin]), size);
  const placeMax = evenNormals(seedFrom([seed, ERROR_STREAM.bias, ERROR_STREAM.tempMax]), size);
  frame.days.forEach((day, index) => {
    const { dayNumber } = day;
    const max = frame.errors(ERROR_STREAM.tempMax, dayNumber);
    const own = frame.errors(ERROR_STREAM.tempMin, dayNumber);
    const sdMax = missingSd(day.error.tempMaxSdC, spreadByDay[index]!);
    const sdMin = missingSd(day.error.tempMinSdC, spreadByDay[index]!);
    for (let m = 0; m < size; m++) {
      const min = MAX_WITH_MIN * max[m]! + Math.sqrt(1 - MAX_WITH_MIN ** 2) * own[m]!;
      atAnchor[2 * index * size + m] = bias.meanC + bias.sdC * placeMin[m]! + sdMin * min;
      atAnchor[(2 * index + 1) * size + m] = PLACE_SD_C.max * placeMax[m]! + sdMax * max[m]!;
    }
  });
  addBetweenAnchors(column, temperatureAnchors(frame, frame.days, frame.site), atAnchor);
  return column;
}
