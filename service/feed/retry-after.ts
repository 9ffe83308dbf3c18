const SECONDS = /^\d{1,6}$/;
/** The oldest of the three forms of a date names no zone; it is UTC like the others. */
const WITHOUT_ZONE = /^[A-Z][a-z]{2} [A-Z][a-z]{2} [ \d]\d \d\d:\d\d:\d\d \d{4}$/;

/**
 * How long a server asks to be left alone, in seconds, from its Retry-After header. [RFC9110 10.2.3]
 *
 * @param given.date  its Date header: a time told by a clock is measured by the same clock where that is known
 * @returns null where nothing readable was asked; 0 for a time gone by
 */
export function retryAfterSeconds(given: {
  readonly retryAfter: string | null;
  readonly date: string | null;
  readonly nowUtcMs: number;
}): number | null {
  const asked = given.retryAfter?.trim() ?? "";
  if (SECONDS.test(asked)) return Number(asked);
  const untilUtcMs = httpDate(asked);
  if (untilUtcMs === null) return null;
  const fromUtcMs = httpDate(given.date?.trim() ?? "") ?? given.nowUtcMs;
  return Math.max(0, Math.ceil((untilUtcMs - fromUtcMs) / 1000));
}

/** [RFC9110 5.6.7] */
function httpDate(text: string): number | null {
  if (!/^[A-Z][a-z]{2,8},? /.test(text)) return null;
  const utcMs = Date.parse(WITHOUT_ZONE.test(text) ? `${text} GMT` : text);
  return Number.isNaN(utcMs) ? null : utcMs;
}
