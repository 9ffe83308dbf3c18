/** Rounded to a whole multiple of `step`, without the tail that binary fractions leave behind. */
export function roundTo(value: number, step: number): number {
  const decimals = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9) + (Number.isInteger(1 / step) ? 0 : 1));
  return Number((Math.round(value / step) * step).toFixed(decimals)) + 0;
}
