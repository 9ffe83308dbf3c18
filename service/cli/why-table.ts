import type { HarmTable } from "../../core/plan/why-pot.ts";

/** Harm by term and day with its sums, as rows of cells; one row alone when nothing does harm. */
export function harmRows(table: HarmTable, days: readonly string[]): string[][] {
  const terms = Object.entries(table).sort(([, a], [, b]) => sum(b) - sum(a));
  if (terms.length === 0) return [["none"]];
  const total = days.map((_, d) => sum(terms.map(([, byDay]) => byDay[d] ?? 0)));
  return [
    daysHead(days, "sum"),
    ...terms.map(([term, byDay]) => [term, ...byDay.map(thousandths), thousandths(sum(byDay))]),
    ["all", ...total.map(thousandths), thousandths(sum(total))],
  ];
}

/** Days of the month over the columns. */
export function daysHead(days: readonly string[], last: string): string[] {
  const heads = days.map((day) => (/^\d{4}-/.test(day) ? day.slice(8) : day));
  return ["", ...heads, ...(last ? [last] : [])];
}

/** 1 = the plant as good as lost is 1000. */
export function thousandths(harm: number): string {
  const shown = (harm * 1000).toFixed(1);
  return shown === "-0.0" ? "0.0" : shown;
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0);
}
