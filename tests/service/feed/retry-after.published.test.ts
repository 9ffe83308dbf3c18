import { expect, it } from "vitest";
import { retryAfterSeconds } from "../../../service/feed/retry-after.ts";

const MINUTE_BEFORE_1994 = Date.UTC(1994, 10, 6, 8, 48, 37);

/** RFC 9110: section 10.2.3 gives both examples of Retry-After, 5.6.7 the three forms of one date (read from memory). */
it.each([
  ["10.2.3, a delay", "120", null, Date.UTC(2030, 0, 1), 120],
  ["10.2.3, a date", "Fri, 31 Dec 1999 23:59:59 GMT", null, Date.UTC(1999, 11, 31, 23, 0, 0), 3599],
  ["5.6.7, IMF-fixdate", "Sun, 06 Nov 1994 08:49:37 GMT", null, MINUTE_BEFORE_1994, 60],
  ["5.6.7, RFC 850", "Sunday, 06-Nov-94 08:49:37 GMT", null, MINUTE_BEFORE_1994, 60],
  ["5.6.7, asctime", "Sun Nov  6 08:49:37 1994", null, MINUTE_BEFORE_1994, 60],
] as const)("%s: %s", (_place, retryAfter, date, nowUtcMs, seconds) => {
  expect(retryAfterSeconds({ retryAfter, date, nowUtcMs })).toBe(seconds);
});

it("measures by the server's own clock where that is told", () => {
  const asked = { retryAfter: "Fri, 31 Dec 1999 23:59:59 GMT", date: "Fri, 31 Dec 1999 23:59:29 GMT" };
  expect(retryAfterSeconds({ ...asked, nowUtcMs: Date.UTC(2030, 0, 1) })).toBe(30);
});

it("asks nothing of what it cannot read, and no time of what has gone by", () => {
  const nowUtcMs = Date.UTC(2030, 0, 1);
  const read = (retryAfter: string | null) => retryAfterSeconds({ retryAfter, date: "soon", nowUtcMs });
  expect([null, "", "soon", "-5", "1e9", "99999999", "2031-01-01"].map(read)).toEqual(Array(7).fill(null));
  expect(read("Fri, 31 Dec 1999 23:59:59 GMT")).toBe(0);
});
