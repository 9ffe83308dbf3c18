import type { CalendarDay } from "../../core/site/site.ts";
import { dateFormat } from "./formatters.ts";

/** An hour of the day as its region writes it; the catalogue puts the parts in order. */
export interface Clock {
  /** "14:00", or "2:00" where the day has two halves. */
  readonly hour: string;
  /** "pm"; null where the day has 24 hours. */
  readonly half: string | null;
  /** The time of the day in words, e.g. "in the afternoon"; empty where the day has 24 hours. */
  readonly partOfDay: string;
}

export function clockOf(utcMs: number, zone: string, locale: string): Clock {
  const at = { timeZone: zone, minute: "2-digit" } as const;
  if (!usesHalfDays(locale))
    return {
      hour: dateFormat(locale, { ...at, hour: "2-digit" }).format(utcMs),
      half: null,
      partOfDay: "",
    };
  const parts = dateFormat(locale, { ...at, hour: "numeric" }).formatToParts(utcMs);
  const inWords = dateFormat(locale, { ...at, hour: "numeric", dayPeriod: "short" }).formatToParts(utcMs);
  const dayPeriod = (of: Intl.DateTimeFormatPart[]) => of.find(({ type }) => type === "dayPeriod")?.value;
  const number = (wanted: string) => parts.find(({ type }) => type === wanted)?.value ?? "";
  const separator = parts[parts.findIndex(({ type }) => type === "minute") - 1]?.value ?? ":";
  return {
    hour: `${number("hour")}${separator}${number("minute")}`,
    half: dayPeriod(parts) ?? "",
    partOfDay: dayPeriod(inWords) ?? "",
  };
}

export function usesHalfDays(locale: string): boolean {
  return dateFormat(locale, { hour: "numeric" }).resolvedOptions().hour12 === true;
}

/** How a day is written. */
export interface DayManner {
  readonly width?: "long" | "short";
  /** The day from which it is told: the year is written where it is another than this day's. */
  readonly seenFrom?: CalendarDay;
  /** Amid a sentence, where some languages write days small. */
  readonly amid?: boolean;
}

/** "Wednesday 25 November". */
export function dayText(day: CalendarDay, locale: string, manner: DayManner = {}): string {
  const { width = "long", seenFrom = day } = manner;
  return dateFormat(locale, {
    timeZone: "UTC",
    weekday: width,
    day: "numeric",
    month: width,
    ...(day.slice(0, 4) === seenFrom.slice(0, 4) ? {} : { year: "numeric" }),
  })
    .format(Date.parse(`${day}T12:00Z`))
    .replace(",", "");
}

/** "Wed". */
export function weekdayText(day: CalendarDay, locale: string): string {
  return dateFormat(locale, { timeZone: "UTC", weekday: "short" }).format(Date.parse(`${day}T12:00Z`));
}

/** Whole days from one calendar day to another. */
export function daysBetween(from: CalendarDay, to: CalendarDay): number {
  return Math.round((Date.parse(`${to}T00:00Z`) - Date.parse(`${from}T00:00Z`)) / 86_400_000);
}
