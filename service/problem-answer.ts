import { STATUS_CODES } from "node:http";
import type { Context } from "hono";
import type { ContentfulStatusCode } from "hono/utils/http-status";
import type { Problem } from "../core/problem.ts";

/** What went wrong with a request, for a program or a person. */
export interface Refusal {
  readonly status: ContentfulStatusCode;
  /** The kind of problem in one word; programs go by it. */
  readonly code: string;
  /** One sentence that says what to do next. */
  readonly detail: string;
  /** Every single fault, where there are several. */
  readonly problems?: readonly Problem[];
}

/**
 * An answer that says what is wrong: problem details (RFC 9457) for programs, one line of text for the rest. `type` is
 * left out: the code says it, and the standard then counts it as about:blank with the status's own title.
 */
export function problemAnswer(c: Context, { status, code, detail, problems }: Refusal): Response {
  if (!wantsJson(c)) return c.text(`${detail}\n`, status);
  const title = STATUS_CODES[status];
  const body = {
    title,
    status,
    detail,
    code,
    requestId: c.get("requestId"),
    ...(problems ? { problems } : {}),
  };
  return c.body(JSON.stringify(body), status, { "Content-Type": "application/problem+json" });
}

function wantsJson(c: Context): boolean {
  return c.req.path.startsWith("/api/") || (c.req.header("accept")?.includes("json") ?? false);
}
