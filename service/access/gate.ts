import type { Context, MiddlewareHandler } from "hono";
import { problemAnswer } from "../problem-answer.ts";
import type { Door } from "./door.ts";
import { roleSuffices } from "./roles.ts";
import type { Visitor } from "./visitor.ts";
import { whomItAdmits } from "./whom-it-admits.ts";

export interface GateInput {
  readonly door: Door;
  /** Who the request says it is from, as far as that holds. */
  visitorOf(c: Context): Promise<Visitor | null>;
}

/** Lets each request pass, or not, as the access table says. */
export function gate({ door, visitorOf }: GateInput): MiddlewareHandler {
  return async (c, next) => {
    const { method, path } = c.req;
    const admits = whomItAdmits(method, path);
    if (admits === "anyone" || admits === "own-link") return next();
    const visitor = (await door.state()) === "open" ? OPEN : await visitorOf(c);
    if (visitor === null) return (await door.state()) === "unclaimed" ? toClaim(c) : toSignIn(c);
    if (!roleSuffices(visitor.role, admits ?? "owner"))
      return admits === undefined ? c.notFound() : refused(c, visitor);
    if (visitor.kind === "session" && isUnasked(c)) return fromElsewhere(c);
    c.set("visitor", visitor);
    return next();
  };
}

const OPEN: Visitor = { kind: "open", role: "owner" };
const SAFE_METHODS = new Set(["GET", "HEAD", "OPTIONS"]);

/** A browser says with every change where it comes from; what carries its cookie without saying so is none. */
function isUnasked(c: Context): boolean {
  const says = c.req.header("origin") ?? c.req.header("sec-fetch-site");
  return !SAFE_METHODS.has(c.req.method) && says === undefined;
}

function fromElsewhere(c: Context): Response | Promise<Response> {
  return problemAnswer(c, {
    status: 403,
    code: "origin-unknown",
    detail:
      "The request does not say which page it comes from. Send it from a page of this house, or use a token.",
  });
}

function toClaim(c: Context): Response | Promise<Response> {
  if (isPageVisit(c)) return c.redirect("/claim", 303);
  return problemAnswer(c, {
    status: 401,
    code: "no-owner-yet",
    detail: "Nobody has chosen the owner's passphrase yet. Open /claim with the code that the console shows.",
  });
}

/** A form sent without a session is not led elsewhere: what was typed would be lost, and whoever sent it would not know. */
function toSignIn(c: Context): Response | Promise<Response> {
  if (isPageVisit(c)) {
    const { path, url } = c.req;
    const back = path === "/" ? "" : `?back=${encodeURIComponent(path + new URL(url).search)}`;
    return c.redirect(`/sign-in${back}`, 303);
  }
  c.header("WWW-Authenticate", 'Bearer realm="Leebench"');
  return problemAnswer(c, {
    status: 401,
    code: "not-signed-in",
    detail: "Sign in at /sign-in and send it again, or send a token. Nothing of this was kept.",
  });
}

function refused(c: Context, { role }: Visitor): Response | Promise<Response> {
  return problemAnswer(c, {
    status: 403,
    code: "role-too-small",
    detail: `Signed in as ${role}, this is not open to you. Ask the owner of the house. Nothing of this was kept.`,
  });
}

function isPageVisit(c: Context): boolean {
  const wantsPage = c.req.header("accept")?.includes("text/html") ?? false;
  return c.req.method === "GET" && wantsPage && !c.req.path.startsWith("/api/");
}
