import type { Context } from "hono";
import { deleteCookie, getCookie, setCookie } from "hono/cookie";

/**
 * Over TLS the name begins with __Host-: a browser then takes the cookie only with Secure, Path=/ and no Domain
 * (RFC 6265bis, 4.1.3.2), so that no neighbouring name can plant one. Over plain http, on this machine or at home,
 * browsers refuse that name, and the plain one is used; over TLS the plain one is not believed.
 */
const SECURE_NAME = "__Host-leebench";
const PLAIN_NAME = "leebench";

interface Speaking {
  readonly isSecure: boolean;
}

export function readSessionCookie(c: Context, { isSecure }: Speaking): string | undefined {
  return getCookie(c, isSecure ? SECURE_NAME : PLAIN_NAME);
}

/** Lax: a link in a mail leads in, a form of another site does not. */
export function writeSessionCookie(
  c: Context,
  { isSecure, secret, maxAgeS }: Speaking & { secret: string; maxAgeS: number },
): void {
  setCookie(c, isSecure ? SECURE_NAME : PLAIN_NAME, secret, {
    path: "/",
    httpOnly: true,
    sameSite: "Lax",
    secure: isSecure,
    maxAge: maxAgeS,
  });
}

export function dropSessionCookie(c: Context, { isSecure }: Speaking): void {
  deleteCookie(c, isSecure ? SECURE_NAME : PLAIN_NAME, { path: "/", secure: isSecure });
}
