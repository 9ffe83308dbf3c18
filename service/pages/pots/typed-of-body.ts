import type { EntryBody } from "../../../core/journal/entry.ts";
import { calendarDay, localHour } from "../../../core/site/local-days.ts";
import type { Typed } from "../forms/form-problems.ts";
import { typedOfVessel } from "../forms/vessel-fields.tsx";
import { LOG_KINDS, type LogKind } from "./log-body.ts";

/** The kind of form in which an entry can be corrected; null for those that are only taken back. */
export function kindOfBody(body: EntryBody): LogKind | null {
  return LOG_KINDS.find((kind) => kind === body.kind) ?? null;
}

/** An entry as the text of its form, for correcting it. */
export function typedOfBody(body: EntryBody): Typed {
  switch (body.kind) {
    case "watered":
      return typedOfWater(body.given);
    case "planted":
      return { ...typedOfVessel(body.vessel), mixId: body.mixId, roots: body.roots };
    default:
      return textOf(body);
  }
}

function typedOfWater(given: Extract<EntryBody, { kind: "watered" }>["given"]): Typed {
  switch (given.kind) {
    case "measured":
      return { waterMl: String(given.waterMl) };
    case "poured-drained":
      return { waterMl: String(given.pouredMl), drainedMl: String(given.drainedMl) };
    case "ran-through":
      return {};
  }
}

function textOf(body: EntryBody): Typed {
  const { kind: _, ...fields } = body;
  return Object.fromEntries(
    Object.entries(fields).flatMap(([name, value]) =>
      typeof value === "string" || typeof value === "number" ? [[name, String(value)]] : [],
    ),
  );
}

/** Day and hour of an entry as the fields of its form. */
export function typedOfInstant(utcMs: number, zone: string): Typed {
  const hours = localHour(utcMs, zone);
  const two = (value: number) => String(Math.floor(value)).padStart(2, "0");
  return { day: calendarDay(utcMs, zone), time: `${two(hours)}:${two((hours % 1) * 60 + 1e-6)}` };
}
