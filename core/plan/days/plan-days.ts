import { localDays, localHour } from "../../site/local-days.ts";
import type { CalendarDay } from "../../site/site.ts";
import { HOUR_MS } from "../../weather/weather.ts";
import { isHail } from "../harm/hail.ts";
import type { Settings } from "../settings.ts";

/**
 * A day as it is planned: from one late morning to the next, so that the coldest hour, about sunrise, belongs to
 * the evening on which something can still be done about it. The first begins at once.
 */
export interface PlanDay {
  readonly day: CalendarDay;
  readonly fromHour: number;
  /** Exclusive. */
  readonly toHour: number;
  /** Where its night begins to count: the cold of this very morning can no longer be helped. */
  readonly nightFromHour: number;
  /** Hours at which outdoor work may be done on this calendar day, in order. */
  readonly workHours: readonly number[];
  /** First hour with hail in the forecast; null when there is none. */
  readonly hailHour: number | null;
}

/** Hours after the start of the grower's day at which a plan day gives way to the next; see `PlanDay`. */
const LATE_MORNING_H = 4;

export interface DaySpan {
  readonly startUtcMs: number;
  readonly hourCount: number;
  /** 1 = thunder in reach or within 30 minutes after. */
  readonly thunder: Uint8Array;
  /** By hour, WMO code 4677. */
  readonly weatherCode: Float64Array;
  readonly zone: string;
  readonly settings: Pick<Settings, "dayStartsHour" | "dayEndsHour">;
}

/** Cuts the hours ahead into plan days; a day whose working hours are over joins the next. */
export function planDays(span: DaySpan): PlanDay[] {
  const clock = Array.from({ length: span.hourCount }, (_, hour) =>
    localHour(span.startUtcMs + hour * HOUR_MS, span.zone),
  );
  const local = localDays(span, span.zone).filter(
    (day, i) => i > 0 || daytime(day, { clock, span }).length > 0,
  );
  const cutOf = (day: { fromHour: number; toHour: number }) =>
    hoursIn(day).find((hour) => clock[hour]! >= span.settings.dayStartsHour + LATE_MORNING_H);
  const days: PlanDay[] = [];
  for (const [i, day] of local.entries()) {
    const cut = cutOf(day);
    if (i > 0 && cut === undefined) break;
    const next = local[i + 1];
    const reach = { fromHour: i === 0 ? 0 : cut!, toHour: (next && cutOf(next)) ?? span.hourCount };
    days.push({
      day: day.day,
      ...reach,
      hailHour: hoursIn(reach).find((hour) => isHail(span.weatherCode[hour]!)) ?? null,
      nightFromHour: cut ?? 0,
      workHours: daytime(day, { clock, span }).filter((hour) => span.thunder[hour] !== 1),
    });
  }
  return days.length > 0 ? days : [emptyDay(span)];
}

/** The plan day of each hour. */
export function dayOfHour(days: readonly PlanDay[], hourCount: number): Int16Array {
  const column = new Int16Array(hourCount);
  for (const [i, day] of days.entries()) column.fill(i, day.fromHour, day.toHour);
  return column;
}

function daytime(
  day: { fromHour: number; toHour: number },
  { clock, span }: { clock: readonly number[]; span: DaySpan },
): number[] {
  const { dayStartsHour, dayEndsHour } = span.settings;
  return hoursIn(day).filter((hour) => clock[hour]! >= dayStartsHour && clock[hour]! + 1 <= dayEndsHour);
}

function hoursIn({ fromHour, toHour }: { fromHour: number; toHour: number }): number[] {
  return Array.from({ length: toHour - fromHour }, (_, i) => fromHour + i);
}

function emptyDay({ hourCount, startUtcMs, zone }: DaySpan): PlanDay {
  const day = localDays({ startUtcMs, hourCount: 1 }, zone)[0]!.day;
  return { day, fromHour: 0, toHour: hourCount, nightFromHour: 0, workHours: [], hailHour: null };
}
