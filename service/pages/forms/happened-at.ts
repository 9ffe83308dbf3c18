import type { Problem } from "../../../core/problem.ts";
import { utcMsOfLocal } from "../../../core/site/local-days.ts";
import { isCalendarDay } from "./day-instant.ts";
import { filledInUtcMs } from "./filled-in-at.ts";
import type { Typed } from "./form-problems.ts";

type Happened = { ok: true; value: number } | { ok: false; problems: readonly Problem[] };

/** Hour of the clock that stands for a day without one. Chosen by us: the morning round. */
const MORNING = 8;

/** When something happened, from the fields `day` and `time`; both empty means now. */
export function happenedAt(
  typed: Typed,
  { nowUtcMs, zone, today }: { nowUtcMs: number; zone: string; today: string },
): Happened {
  const [day, time] = [typed.day ?? "", typed.time ?? ""];
  if (day === "" && time === "") return { ok: true, value: filledInUtcMs(typed, nowUtcMs) };
  const onDay = day === "" ? today : day;
  const hour = time === "" ? Math.min(MORNING, 24) : hourOf(time);
  const problems = [
    ...(isCalendarDay(onDay) ? [] : [{ code: "not-a-day", path: ["day"] }]),
    ...(hour === null ? [{ code: "not-a-time", path: ["time"] }] : []),
  ];
  if (!isCalendarDay(onDay) || hour === null) return { ok: false, problems };
  const atUtcMs = utcMsOfLocal(onDay, hour, zone);
  if (atUtcMs <= nowUtcMs) return { ok: true, value: atUtcMs };
  if (time === "" && onDay === today) return { ok: true, value: nowUtcMs };
  const [code, field] = onDay > today ? ["day-to-come", "day"] : ["time-to-come", "time"];
  return { ok: false, problems: [{ code, path: [field] }] };
}

function hourOf(time: string): number | null {
  const match = /^([01]?\d|2[0-3]):([0-5]\d)(:\d\d)?$/.exec(time);
  return match ? Number(match[1]) + Number(match[2]) / 60 : null;
}
