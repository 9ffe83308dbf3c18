import type { Problem } from "../../../core/problem.ts";
import { type FeedCode, type FeedRole, feedProblem } from "../feed-problem.ts";
import type { HourlyAnswer } from "./answer-schema.ts";
import { possible, type Quantity, toOurUnit } from "./quantity.ts";

export interface ReadColumn {
  /** By row, our unit; all NaN when the column cannot be used. */
  readonly byRow: Float64Array;
  readonly notes: readonly Problem[];
}

/** With more of its values than this beyond what can be, a column is not read at all: its unit is likely wrong. */
const MOST_BAD_FRAC = 0.05;

/** How the feed spells the unit of a variable that the chosen model lacks. */
const NOT_OFFERED = "undefined";

/** One column of an answer, checked for presence, unit, length and values. A bad one is unknown, with a note. */
export function readColumn(
  answer: HourlyAnswer,
  want: { key: string; quantity: Quantity; feed: FeedRole },
): ReadColumn {
  const rowCount = answer.hourly.time.length;
  const unusable = (code: FeedCode, data: Record<string, unknown> = {}): ReadColumn => ({
    byRow: new Float64Array(rowCount).fill(Number.NaN),
    notes: [feedProblem(code, { feed: want.feed, column: want.key, ...data }, ["hourly", want.key])],
  });
  const column = Object.hasOwn(answer.hourly, want.key) ? answer.hourly[want.key] : undefined;
  if (!Array.isArray(column)) return unusable("feed-column-missing");
  const unit = answer.hourly_units[want.key] ?? "";
  if (unit === NOT_OFFERED) return unusable("feed-column-not-offered");
  const convert = toOurUnit(want.quantity, unit);
  if (convert === null) return unusable("feed-column-unit", { unit: unit.slice(0, 20) });
  if (column.length !== rowCount) {
    return unusable("feed-column-length", { rows: rowCount, values: column.length });
  }
  return valuesOf(column, (value) => possible(want.quantity, convert(value)), unusable);
}

function valuesOf(
  column: readonly unknown[],
  convert: (value: number) => number,
  unusable: (code: FeedCode, data?: Record<string, unknown>) => ReadColumn,
): ReadColumn {
  const byRow = new Float64Array(column.length).fill(Number.NaN);
  let known = 0;
  let bad = 0;
  for (let row = 0; row < column.length; row += 1) {
    const value = column[row];
    if (value === null) continue;
    const ours = typeof value === "number" ? convert(value) : Number.NaN;
    byRow[row] = ours;
    if (Number.isNaN(ours)) bad += 1;
    else known += 1;
  }
  if (known === 0 && bad === 0) return unusable("feed-column-empty");
  if (bad === 0) return { byRow, notes: [] };
  const refused = unusable("feed-column-values", { bad, known });
  return bad > MOST_BAD_FRAC * (bad + known) ? refused : { byRow, notes: refused.notes };
}
