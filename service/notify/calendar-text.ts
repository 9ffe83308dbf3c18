import ical, { ICalCalendarMethod } from "ical-generator";
import { type CalendarEvent, type CalendarInput, calendarEvents } from "./calendar-events.ts";

const REFRESH_S = 3600;

/** Everything that has a day or an hour, for a calendar that fetches it again and again (RFC 5545). */
export function calendarFeed(input: CalendarInput): string {
  return calendarText(input, calendarEvents(input), { name: input.collection.site.name });
}

/** What falls on the day of the brief, to go with a mail; null when nothing has an hour. */
export function calendarOfDay(input: CalendarInput): string | null {
  const endUtcMs = Date.parse(input.plan.horizon.from) + 86_400_000;
  const events = calendarEvents(input).filter(
    ({ when }) => when.kind === "hours" && when.startUtcMs < endUtcMs,
  );
  return events.length === 0 ? null : calendarText(input, events, { method: ICalCalendarMethod.PUBLISH });
}

/** Instants in UTC, days as days; made at the plan's own instant, so that the same plan gives the same text. */
function calendarText(
  { plan, words }: CalendarInput,
  events: readonly CalendarEvent[],
  how: { name?: string; method?: ICalCalendarMethod },
): string {
  const calendar = ical({
    prodId: { company: "Leebench", product: "Leebench", language: words.language.toUpperCase() },
    ...(how.name === undefined ? {} : { name: how.name, ttl: REFRESH_S }),
    ...(how.method === undefined ? {} : { method: how.method }),
  });
  const stamp = new Date(plan.issuedAt);
  for (const { uid, summary, lines, when } of events)
    calendar.createEvent({
      id: uid,
      stamp,
      summary: summary.replaceAll("\u00a0", " "),
      ...(lines.length === 0 ? {} : { description: lines.join("\n").replaceAll("\u00a0", " ") }),
      ...(when.kind === "hours"
        ? { start: new Date(when.startUtcMs), end: new Date(when.endUtcMs) }
        : { start: new Date(`${when.day}T00:00Z`), end: dayAfter(when.day), allDay: true }),
    });
  return calendar.toString();
}

/** RFC 5545 section 3.6.1: the end of an event of whole days is the first day after it. */
function dayAfter(day: string): Date {
  return new Date(Date.parse(`${day}T00:00Z`) + 86_400_000);
}
