import type { Problem } from "../../core/problem.ts";
import { HOUR_MS } from "../../core/weather/weather.ts";
import { found, textAt, valueAt } from "./raw-case.ts";

const HOURS = ["weather", "hours"] as const;
const MEMBERS = ["weather", "members"] as const;

/** Columns of one length, members of one number, a start on the whole hour. */
export function weatherRules(raw: unknown): Problem[] {
  const hourCount = lengthOf(valueAt(raw, [...HOURS, "tempC"]));
  if (hourCount === undefined) return wholeHour(raw);
  const none = hourCount === 0 ? [{ code: "no-hours", path: [...HOURS, "tempC"] }] : [];
  return [...none, ...wholeHour(raw), ...hourColumns(raw, hourCount), ...memberColumns(raw, hourCount)];
}

function wholeHour(raw: unknown): Problem[] {
  const start = textAt(raw, ["weather", "start"]);
  const utcMs = start === undefined ? Number.NaN : Date.parse(start);
  if (!Number.isFinite(utcMs) || utcMs % HOUR_MS === 0) return [];
  return [{ code: "not-a-whole-hour", path: ["weather", "start"], data: { given: start } }];
}

function hourColumns(raw: unknown, hourCount: number): Problem[] {
  return keysAt(raw, HOURS).flatMap((name) => wrongLength(raw, [...HOURS, name], hourCount));
}

function memberColumns(raw: unknown, hourCount: number): Problem[] {
  const memberCount = lengthOf(valueAt(raw, [...MEMBERS, "tempC"]));
  if (memberCount === undefined) return [];
  return keysAt(raw, MEMBERS).flatMap((name) => [
    ...wrongLength(raw, [...MEMBERS, name], memberCount),
    ...found(raw, [...MEMBERS, name]).flatMap(({ path }) => wrongLength(raw, path, hourCount)),
  ]);
}

function wrongLength(raw: unknown, path: readonly (string | number)[], expected: number): Problem[] {
  const given = lengthOf(valueAt(raw, path));
  if (given === undefined || given === expected) return [];
  return [{ code: "wrong-length", path, data: { given, expected } }];
}

function lengthOf(value: unknown): number | undefined {
  return Array.isArray(value) ? value.length : undefined;
}

function keysAt(raw: unknown, path: readonly string[]): string[] {
  const value = valueAt(raw, path);
  return value !== null && typeof value === "object" ? Object.keys(value) : [];
}
