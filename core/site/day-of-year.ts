/** Number of the day in its UTC year, 1 to 366, at an instant. */
export function dayOfYear(utcMs: number): number {
  const at = new Date(utcMs);
  return 1 + Math.floor((utcMs - Date.UTC(at.getUTCFullYear(), 0, 1)) / 86_400_000);
}
