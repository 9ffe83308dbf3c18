import { createHash, randomBytes, timingSafeEqual } from "node:crypto";

/** 256 bits of chance, as text that fits a header and a cookie. */
export function newSecret(): string {
  return randomBytes(32).toString("base64url");
}

/** Letters and digits that are not taken for one another when read aloud or typed. */
const CODE_SIGNS = "23456789ABCDEFGHJKMNPQRSTVWXYZ";
const CODE_LENGTH = 12;
/** Highest byte from which every sign comes equally often. */
const FAIR_BELOW = 256 - (256 % CODE_SIGNS.length);

/** A code to type in once, some 58 bits of chance, in groups of four. */
export function newCode(): string {
  let signs = "";
  while (signs.length < CODE_LENGTH)
    for (const byte of randomBytes(CODE_LENGTH))
      if (byte < FAIR_BELOW && signs.length < CODE_LENGTH) signs += CODE_SIGNS[byte % CODE_SIGNS.length];
  return signs.match(/.{4}/g)!.join("-");
}

/** The code however it was typed: small letters, spaces and lines between do not matter. */
export function plainCode(typed: string): string {
  return typed.toUpperCase().replace(/[^A-Z0-9]/g, "");
}

/**
 * For secrets of full chance only: those cannot be guessed, so a fast digest keeps them as well as a slow one.
 * Passphrases go through passphrase.ts.
 */
export function digestOf(secret: string): string {
  return createHash("sha256").update(secret).digest("hex");
}

/** Whether two digests are one, in a time that tells nothing. */
export function sameDigest(a: string, b: string): boolean {
  return a.length === b.length && timingSafeEqual(Buffer.from(a), Buffer.from(b));
}
