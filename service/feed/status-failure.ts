import type { Problem } from "../../core/problem.ts";
import { type FeedCode, type FeedRole, feedProblem } from "./feed-problem.ts";
import { retryAfterSeconds } from "./retry-after.ts";

const CODE_OF_STATUS: Readonly<Record<number, FeedCode>> = {
  400: "feed-rejected",
  401: "feed-denied",
  403: "feed-denied",
  404: "feed-not-found",
  422: "feed-not-covered",
  429: "feed-throttled",
};

const LONGEST_REASON = 200;

interface RefusedAnswer {
  readonly status: number;
  readonly text: string;
  readonly retryAfter: string | null;
  /** Its own clock, from the Date header. */
  readonly date: string | null;
  readonly nowUtcMs: number;
}

/** The problem told by a status other than success; `secret` never stands in what the server said. */
export function statusFailure(
  answer: RefusedAnswer,
  where: { feed: FeedRole; host: string; secret?: string | undefined },
): Problem {
  const { secret, ...rest } = where;
  const reason = reasonIn(answer.text, secret);
  const retryAfterS = retryAfterSeconds(answer);
  const wrongKey = answer.status === 400 && reason !== null && /api key/i.test(reason);
  const code = wrongKey ? "feed-denied" : codeOf(answer.status);
  return feedProblem(code, {
    ...rest,
    status: answer.status,
    ...(reason === null ? {} : { reason }),
    ...(retryAfterS === null ? {} : { retryAfterS }),
    ...(code === "feed-denied" && where.feed === "fallback" ? { next: "check-contact" } : {}),
  });
}

function codeOf(status: number): FeedCode {
  if (status >= 500) return "feed-server-error";
  return CODE_OF_STATUS[status] ?? "feed-unexpected-status";
}

/** The feed's own words from `{ "error": true, "reason": "..." }`; pages of HTML tell nothing worth keeping. */
function reasonIn(text: string, secret: string | undefined): string | null {
  const found = /"reason"\s*:\s*"((?:[^"\\]|\\.)*)"/.exec(text)?.[1];
  if (found === undefined) return null;
  const clean = secret ? found.replaceAll(secret, "***") : found;
  return clean.slice(0, LONGEST_REASON);
}
