import type { Outcome, Problem } from "../../core/problem.ts";
import type { DailyWeather } from "../../core/replay/hours/daily-weather.ts";
import type { CalendarDay } from "../../core/site/site.ts";
import { csvRows } from "../csv.ts";

const COLUMNS = ["day", "rainMm", "tempMaxC", "tempMinC", "windMPerS"] as const;
const DAY_MS = 86_400_000;

/** Days of a station from a CSV with the columns day, rainMm, tempMaxC, tempMinC, windMPerS; or every fault with its line. */
export function daysFromCsv(text: string): Outcome<Omit<DailyWeather, "site" | "climate">> {
  const [head = [], ...rows] = csvRows(text);
  if (head.join() !== COLUMNS.join()) {
    return { ok: false, problems: [{ code: "columns-differ", path: [1], data: { expected: COLUMNS } }] };
  }
  const problems = rows.flatMap((row, i) => rowFaults(row, { line: i + 2, before: rows[i - 1]?.[0] }));
  if (rows.length === 0) problems.push({ code: "no-days", path: [] });
  if (problems.length > 0) return { ok: false, problems };
  const column = (name: (typeof COLUMNS)[number]) =>
    Float64Array.from(rows, (row) => Number(row[COLUMNS.indexOf(name)]));
  return {
    ok: true,
    value: {
      firstDay: rows[0]![0] as CalendarDay,
      rainMm: column("rainMm"),
      tempMaxC: column("tempMaxC"),
      tempMinC: column("tempMinC"),
      windMPerS: column("windMPerS"),
    },
  };
}

function rowFaults(row: readonly string[], at: { line: number; before: string | undefined }): Problem[] {
  const fault = (code: string, data: Record<string, unknown> = {}): Problem => ({
    code,
    path: [at.line],
    data,
  });
  if (row.length !== COLUMNS.length) return [fault("columns-missing", { found: row.length })];
  const dayMs = Date.parse(`${row[0]}T00:00:00Z`);
  if (!/^\d{4}-\d\d-\d\d$/.test(row[0]!) || Number.isNaN(dayMs)) return [fault("no-day", { found: row[0] })];
  const [rainMm, tempMaxC, tempMinC, windMPerS] = row.slice(1).map(numberOf) as [
    number,
    number,
    number,
    number,
  ];
  const faults: Problem[] = [];
  if (![rainMm, tempMaxC, tempMinC, windMPerS].every(Number.isFinite)) return [fault("no-number")];
  if (rainMm < 0 || windMPerS < 0) faults.push(fault("below-zero"));
  if (tempMinC > tempMaxC) faults.push(fault("minimum-above-maximum"));
  if (at.before !== undefined && dayMs - Date.parse(`${at.before}T00:00:00Z`) !== DAY_MS) {
    faults.push(fault("days-not-in-a-row", { after: at.before }));
  }
  return faults;
}

/** An empty cell is unknown, not zero. */
function numberOf(text: string): number {
  return text.trim() === "" ? Number.NaN : Number(text);
}
