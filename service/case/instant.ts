import { z } from "zod";

const FORM = /^\d{4}-\d{2}-\d{2}T(?:[01]\d|2[0-3]):[0-5]\d(?::[0-5]\d(?:\.\d{1,3})?)?Z$/;

/** Instants travel as ISO 8601 in UTC, seconds optional: "2031-03-05T06:30Z". */
export const InstantText = z
  .string()
  .regex(FORM)
  .refine(onTheCalendar, { params: { code: "no-such-day" } })
  .describe("Instant in UTC, ISO 8601: 2031-03-05T06:30Z; seconds may be left out.");

/** The same, read into epoch milliseconds. */
export const InstantMs = InstantText.transform((text) => Date.parse(text));

/** A calendar day in the site's zone. */
export const DayText = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/)
  .refine(onTheCalendar, { params: { code: "no-such-day" } })
  .describe("Calendar day in the site's zone: 2031-03-05.");

/** @returns "2031-03-05T06:30:00.000Z" for epoch milliseconds */
export function instantText(utcMs: number): string {
  return new Date(utcMs).toISOString();
}

/** Date.parse turns 30 February into 2 March; a day that is not on the calendar does not come back as written. */
function onTheCalendar(text: string): boolean {
  const utcMs = Date.parse(text);
  return Number.isFinite(utcMs) && instantText(utcMs).slice(0, 10) === text.slice(0, 10);
}
