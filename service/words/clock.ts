import type { CalendarDay } from "../../core/site/site.ts";
import { dateFormat } from "./formatters.ts";

/** "14:00", or "2:00 pm" where that is the custom. */
export function clockText(utcMs: number, zone: string, locale: string): string {
  const hour = usesHalfDays(locale) ? "numeric" : "2-digit";
  return dateFormat(locale, { timeZone: zone, hour, minute: "2-digit" }).format(utcMs);
}

function usesHalfDays(locale: string): boolean {
  return dateFormat(locale, { hour: "numeric" }).resolvedOptions().hour12 === true;
}

/** "Wednesday 25 November". */
export function dayText(day: CalendarDay, locale: string, width: "long" | "short" = "long"): string {
  return dateFormat(locale, {
    timeZone: "UTC",
    weekday: width,
    day: "numeric",
    month: width,
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
