const dates = new Map<string, Intl.DateTimeFormat>();
const numbers = new Map<string, Intl.NumberFormat>();

/** Making a formatter costs a thousand times what using one does, so each kind is made once. */
export function dateFormat(locale: string, options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat {
  const key = `${locale} ${JSON.stringify(options)}`;
  const known = dates.get(key) ?? new Intl.DateTimeFormat(locale, options);
  dates.set(key, known);
  return known;
}

export function numberFormat(locale: string, mostDigits: number): Intl.NumberFormat {
  const key = `${locale} ${mostDigits}`;
  const known = numbers.get(key) ?? new Intl.NumberFormat(locale, { maximumFractionDigits: mostDigits });
  numbers.set(key, known);
  return known;
}
