import type { Problem } from "../../core/problem.ts";
import { type FeedCode, type FeedRole, feedProblem } from "./feed-problem.ts";
import { BodyNotText, BodyTooLarge } from "./read-body.ts";

const CODE_OF_CAUSE: Readonly<Record<string, FeedCode>> = {
  ECONNREFUSED: "feed-refused",
  EHOSTUNREACH: "feed-refused",
  ENETUNREACH: "feed-refused",
  ENOTFOUND: "feed-unknown-host",
  EAI_AGAIN: "feed-unknown-host",
  UND_ERR_CONNECT_TIMEOUT: "feed-timeout",
  UND_ERR_HEADERS_TIMEOUT: "feed-timeout",
  UND_ERR_BODY_TIMEOUT: "feed-timeout",
  ETIMEDOUT: "feed-timeout",
  UND_ERR_SOCKET: "feed-cut-short",
  UND_ERR_RES_CONTENT_LENGTH_MISMATCH: "feed-cut-short",
  ECONNRESET: "feed-cut-short",
  EPIPE: "feed-cut-short",
  Z_BUF_ERROR: "feed-cut-short",
  Z_DATA_ERROR: "feed-bad-text",
  EPROTO: "feed-tls",
};

const PHASE_OF_CAUSE: Readonly<Record<string, string>> = {
  UND_ERR_CONNECT_TIMEOUT: "connect",
  UND_ERR_HEADERS_TIMEOUT: "headers",
  UND_ERR_BODY_TIMEOUT: "body",
};

/** The problem behind an error of the transport. The error's own message is left out: it may hold an address. */
export function transportFailure(error: unknown, where: { feed: FeedRole; host: string }): Problem {
  if (error instanceof BodyTooLarge) return feedProblem("feed-too-large", where);
  if (error instanceof BodyNotText) return feedProblem("feed-bad-text", where);
  if (error instanceof Error && error.name === "TimeoutError") {
    return feedProblem("feed-timeout", { ...where, phase: "whole" });
  }
  const cause = causeOf(error);
  const code = CODE_OF_CAUSE[cause] ?? (isTls(cause) ? "feed-tls" : "feed-broken-transport");
  const phase = PHASE_OF_CAUSE[cause];
  return feedProblem(code, { ...where, cause, ...(phase === undefined ? {} : { phase }) });
}

/** First code found on the error, its causes or, for a host with several addresses, its parts. */
function causeOf(error: unknown): string {
  for (let at: unknown = error; at instanceof Error; at = at.cause) {
    if ("code" in at && typeof at.code === "string") return at.code;
    if (at instanceof AggregateError && at.errors.length > 0) return causeOf(at.errors[0]);
  }
  return "unknown";
}

function isTls(cause: string): boolean {
  return /CERT|^ERR_TLS|^ERR_SSL|SIGNATURE|UNABLE_TO/.test(cause);
}
