import { addBetweenAnchors, noonAnchors } from "./anchors.ts";
import { ensembleCourse, missingSd } from "./ensemble-course.ts";
import { ERROR_STREAM } from "./error-draws.ts";
import type { MemberFrame } from "./member-frame.ts";

/** Error of dew point over that of the minimum. No score by lead day was found; chosen by us. */
const DEW_OVER_MINIMUM = 0.8;
/** How far a dew point's error goes with that of the night. Chosen by us: nights cool towards their dew point. */
const DEW_WITH_MINIMUM = 0.5;
/** Least wind a member may have, m/s at 10 m; below this cups stand still. Common practice. */
const LEAST_WIND_M_PER_S = 0.2;

/** Dew point by member, °C, never above the member's temperature. */
export function dewMembersC(frame: MemberFrame, tempC: Float64Array): Float64Array {
  const { column, spreadByDay } = ensembleCourse(frame, "dewPointC");
  const atNoon = new Float64Array(frame.days.length * frame.size);
  frame.days.forEach((day, index) => {
    const night = frame.errors(ERROR_STREAM.tempMin, day.dayNumber);
    const own = frame.errors(ERROR_STREAM.dew, day.dayNumber);
    const sd = missingSd(DEW_OVER_MINIMUM * day.error.tempMinSdC, spreadByDay[index]!);
    for (let m = 0; m < frame.size; m++) {
      const error = DEW_WITH_MINIMUM * night[m]! + Math.sqrt(1 - DEW_WITH_MINIMUM ** 2) * own[m]!;
      atNoon[index * frame.size + m] = sd * error;
    }
  });
  addBetweenAnchors(column, noonAnchors(frame, frame.days, frame.site), atNoon);
  for (let i = 0; i < column.length; i++) column[i] = Math.min(column[i]!, tempC[i]!);
  return column;
}

/** Mean wind at 10 m by member, m/s. */
export function windMembersMPerS(frame: MemberFrame): Float64Array {
  const { column, spreadByDay } = ensembleCourse(frame, "windMPerS");
  const atNoon = new Float64Array(frame.days.length * frame.size);
  frame.days.forEach((day, index) => {
    const error = frame.errors(ERROR_STREAM.wind, day.dayNumber);
    const sd = missingSd(day.error.windSdMPerS, spreadByDay[index]!);
    for (let m = 0; m < frame.size; m++) atNoon[index * frame.size + m] = sd * error[m]!;
  });
  addBetweenAnchors(column, noonAnchors(frame, frame.days, frame.site), atNoon);
  for (let i = 0; i < column.length; i++) column[i] = Math.max(LEAST_WIND_M_PER_S, column[i]!);
  return column;
}
