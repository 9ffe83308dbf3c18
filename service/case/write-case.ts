import type { z } from "zod";
import type { EntryBody, JournalEntry } from "../../core/journal/entry.ts";
import type { PlanInput } from "../../core/plan/make-plan.ts";
import type { MemberColumns, Weather } from "../../core/weather/weather.ts";
import type { CaseSchema } from "./case-schema.ts";
import { instantText } from "./instant.ts";
import type { EntryBodySchema, JournalEntrySchema } from "./journal-schema.ts";
import type { WeatherSchema } from "./weather-schema.ts";

export type WrittenCase = z.input<typeof CaseSchema>;
type WrittenWeather = z.input<typeof WeatherSchema>;
type WrittenBody = z.input<typeof EntryBodySchema>;
type WrittenEntry = z.input<typeof JournalEntrySchema>;

/** The reverse of reading: what `plan` takes as plain JSON. NaN becomes null. */
export function writeCase(input: PlanInput): WrittenCase {
  const { nowUtcMs, journal, weather, ...rest } = input;
  const written = {
    ...rest,
    today: instantText(nowUtcMs),
    journal: journal.map(writtenEntry),
    weather: writtenWeather(weather),
  };
  return written as WrittenCase;
}

/** One journal entry as JSON. */
export function writtenEntry(entry: JournalEntry): WrittenEntry {
  const { atUtcMs, recordedUtcMs, body, ...rest } = entry;
  return {
    ...rest,
    at: instantText(atUtcMs),
    recordedAt: instantText(recordedUtcMs),
    body: writtenBody(body),
  };
}

function writtenBody(body: EntryBody): WrittenBody {
  switch (body.kind) {
    case "rain-gauge":
    case "thermometer": {
      const { sinceUtcMs, ...rest } = body;
      return { ...rest, since: instantText(sinceUtcMs) };
    }
    case "correction": {
      const { atUtcMs, body: corrected, ...rest } = body;
      return { ...rest, at: instantText(atUtcMs), body: writtenBody(corrected) } as WrittenBody;
    }
    default:
      return body;
  }
}

/** Weather as JSON: one array a column, one array a member. */
export function writtenWeather(weather: Weather): WrittenWeather {
  const { origin, hours, members } = weather;
  const columns = Object.entries(hours).map(([name, values]) => [name, nullable(values)]);
  return {
    start: instantText(weather.startUtcMs),
    fetchedAt: instantText(origin.fetchedUtcMs),
    source: origin.source,
    credit: origin.credit,
    ...(origin.coarseFromUtcMs === undefined ? {} : { coarseFrom: instantText(origin.coarseFromUtcMs) }),
    hours: Object.fromEntries(columns),
    members: members && writtenMembers(members),
  };
}

function writtenMembers(members: MemberColumns): NonNullable<WrittenWeather["members"]> {
  const { memberCount, ...columns } = members;
  const byMember = Object.entries(columns).map(([name, values]) => [
    name,
    Array.from({ length: memberCount }, (_, member) =>
      nullable(values.filter((_value, index) => index % memberCount === member)),
    ),
  ]);
  return Object.fromEntries(byMember);
}

function nullable(values: Float64Array): (number | null)[] {
  return Array.from(values, (value) => (Number.isNaN(value) ? null : value));
}
