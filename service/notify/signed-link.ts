import { createHmac, timingSafeEqual } from "node:crypto";

/** What a link is good for: exactly one thing. */
export type LinkClaims =
  | {
      readonly purpose: "done" | "not-today" | "log";
      readonly personId: string;
      readonly siteId: string;
      /** The plan that it answers, by the instant at which it was made. */
      readonly madeUtcMs: number;
      /** One deed of it, or null for the whole list. */
      readonly deed: { readonly potId: string; readonly action: string } | null;
      readonly expiresUtcMs: number;
    }
  | { readonly purpose: "stop-mail"; readonly channelId: string };

export type LinkRead =
  | { readonly ok: true; readonly claims: LinkClaims }
  | { readonly ok: false; readonly fault: "link-broken" | "link-expired" };

/** Half of the digest, the least that RFC 2104 section 5 allows. */
const MAC_BYTES = 16;
/** Keeps what is signed here apart from anything else that the key may ever sign. */
const DOMAIN = "leebench-link-1";
const ANSWERS = new Set<string>(["done", "not-today", "log"]);

/** The claims with their signature, for a path: letters, digits, "-", "_" and one dot. */
export function signedLink(claims: LinkClaims, key: Buffer): string {
  const body = Buffer.from(JSON.stringify(partsOf(claims))).toString("base64url");
  return `${body}.${macOf(body, key).toString("base64url")}`;
}

/** The claims again. Anything not signed by this house is broken, whatever it says. */
export function readLink(
  token: string,
  { key, nowUtcMs }: { readonly key: Buffer; readonly nowUtcMs: number },
): LinkRead {
  const [body = "", mac = "", ...rest] = token.split(".");
  const given = Buffer.from(mac, "base64url");
  const isOurs = rest.length === 0 && given.length === MAC_BYTES && timingSafeEqual(given, macOf(body, key));
  if (!isOurs) return { ok: false, fault: "link-broken" };
  const claims = claimsOf(JSON.parse(Buffer.from(body, "base64url").toString("utf8")));
  if (claims === null) return { ok: false, fault: "link-broken" };
  if (claims.purpose !== "stop-mail" && nowUtcMs >= claims.expiresUtcMs)
    return { ok: false, fault: "link-expired" };
  return { ok: true, claims };
}

function macOf(body: string, key: Buffer): Buffer {
  return createHmac("sha256", key).update(`${DOMAIN}.${body}`).digest().subarray(0, MAC_BYTES);
}

function partsOf(claims: LinkClaims): unknown[] {
  if (claims.purpose === "stop-mail") return [claims.purpose, claims.channelId];
  const { purpose, personId, siteId, madeUtcMs, deed, expiresUtcMs } = claims;
  return [purpose, personId, siteId, madeUtcMs, expiresUtcMs, ...(deed ? [deed.potId, deed.action] : [])];
}

/** Null for a shape that only another version of the program can have signed. */
function claimsOf(parts: unknown): LinkClaims | null {
  if (!Array.isArray(parts)) return null;
  const [purpose, first, siteId, madeUtcMs, expiresUtcMs, potId, action] = parts;
  if (purpose === "stop-mail" && parts.length === 2) return { purpose, channelId: first };
  if (!ANSWERS.has(purpose) || (parts.length !== 5 && parts.length !== 7)) return null;
  const deed = parts.length === 7 ? { potId, action } : null;
  return { purpose, personId: first, siteId, madeUtcMs, deed, expiresUtcMs };
}
