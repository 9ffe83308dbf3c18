/** Day of an instant, as ISO 8601 writes it in UTC; a day either way does not matter where this is shown. */
export function dayText(utcMs: number): string {
  return new Date(utcMs).toISOString().slice(0, 10);
}
