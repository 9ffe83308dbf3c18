import type { MiddlewareHandler } from "hono";
import { problemAnswer } from "../problem-answer.ts";

/** Nothing from elsewhere, nothing inline, never in a frame. */
const CONTENT_POLICY = [
  "default-src 'none'",
  "style-src 'self'",
  "script-src 'self'",
  "img-src 'self'",
  "connect-src 'self'",
  "manifest-src 'self'",
  "worker-src 'self'",
  "form-action 'self'",
  "base-uri 'none'",
  "frame-ancestors 'none'",
  "require-trusted-types-for 'script'",
  "trusted-types leebench",
].join("; ");

const HEADERS: Readonly<Record<string, string>> = {
  "Content-Security-Policy": CONTENT_POLICY,
  "X-Content-Type-Options": "nosniff",
  "Referrer-Policy": "same-origin",
  "Cross-Origin-Resource-Policy": "same-origin",
  "X-Frame-Options": "DENY",
  "Permissions-Policy": "camera=(), geolocation=(), microphone=()",
};

/** Puts the protective headers on every answer, whoever made it. */
export const protectiveHeaders: MiddlewareHandler = async (c, next) => {
  await next();
  for (const [name, value] of Object.entries(HEADERS)) c.res.headers.set(name, value);
  if (!fromWithin(c.req.header("sec-fetch-site"))) c.res.headers.set(...PARTED_FROM_OPENER);
};

/**
 * Keeps a site that opened a page of ours from holding on to its window. Where the grower opened it there is nobody to
 * part from, and parting would cost a phone a new process before its first stroke (DEVELOPERS, decision 16).
 */
const PARTED_FROM_OPENER = ["Cross-Origin-Opener-Policy", "same-origin"] as const;

/** Asked for by the grower or by one of our own pages; a browser that does not say may have been sent by anybody. */
const fromWithin = (site: string | undefined) => site === "same-origin" || site === "none";

const SAFE_METHODS = new Set(["GET", "HEAD", "OPTIONS"]);

/** Refuses what another site's page sends in the grower's name. */
export const sameOriginOnly: MiddlewareHandler = async (c, next) => {
  if (SAFE_METHODS.has(c.req.method) || isSameOrigin(c.req.raw)) return next();
  return problemAnswer(c, {
    status: 403,
    code: "from-another-site",
    detail: "This was sent from another site's page and was not kept. Open the page here and send it again.",
  });
};

/**
 * Sec-Fetch-Site decides where the browser sends it; else Origin must name our own host (the scheme may differ behind a
 * proxy). A request with neither comes from no browser page and cannot carry a grower's session.
 */
function isSameOrigin(request: Request): boolean {
  const site = request.headers.get("sec-fetch-site") ?? undefined;
  if (site !== undefined) return fromWithin(site);
  const origin = request.headers.get("origin");
  if (origin === null) return true;
  return URL.canParse(origin) && new URL(origin).host === hostOf(request);
}

function hostOf(request: Request): string {
  return request.headers.get("host") ?? new URL(request.url).host;
}
