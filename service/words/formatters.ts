const dates = new Map<string, Intl.DateTimeFormat>();
const numbers = new Map<string, Intl.NumberFormat>();

/** Making a formatter costs a thousand times what using one does, so each kind is made once. */
export function dateFormat(locale: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${locale} ${JSON.stringify(options)}`;
  const known = dates.get(key) ?? new Intl.DateTimeFormat(locale, options);
  dates.set(key, known);
  return known;
}

export function numberFormat(
  locale: string,
  { mostDigits, grouped = true }: { mostDigits: number; grouped?: boolean },
): Intl.NumberFormat {
  const key = `${locale} ${mostDigits} ${grouped}`;
  const options = { maximumFractionDigits: mostDigits, useGrouping: grouped };
  const known = numbers.get(key) ?? new Intl.NumberFormat(locale, options);
  numbers.set(key, known);
  return known;
}

/** What stands between a number and its percent sign: nothing, or a space that does not break. */
export function gapBeforePercent(locale: string): string {
  const parts = percentFormat(locale).formatToParts(0.5);
  return parts.some(({ type }) => type === "literal") ? "\u00a0" : "";
}

function percentFormat(locale: string): Intl.NumberFormat {
  const key = `${locale} percent`;
  const known = numbers.get(key) ?? new Intl.NumberFormat(locale, { style: "percent" });
  numbers.set(key, known);
  return known;
}
