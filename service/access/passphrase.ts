import { randomBytes, type ScryptOptions, scrypt, timingSafeEqual } from "node:crypto";

/**
 * Cost of one try: 32 MiB and three passes (N = 2^15, r = 8, p = 3), one of the settings that the OWASP Password
 * Storage Cheat Sheet holds for equal to 128 MiB and one pass; the smaller memory suits a small board.
 */
const COST = { log2N: 15, r: 8, p: 3 };
const HASH_BYTES = 32;
const SALT_BYTES = 16;

/** Record of a passphrase, its own costs and salt in it. */
export async function passphraseRecord(passphrase: string, salt = randomBytes(SALT_BYTES)): Promise<string> {
  const hash = await hashed(passphrase, { ...COST, salt });
  return ["scrypt", COST.log2N, COST.r, COST.p, salt.toString("base64url"), hash.toString("base64url")].join(
    "$",
  );
}

/** Stands in where nobody has that name, so that the answer takes as long as for somebody. */
const NOBODY = ["scrypt", COST.log2N, COST.r, COST.p, "c2FsdHNhbHRzYWx0c2FsdA", "A".repeat(43)].join("$");

/** Whether the passphrase is the record's, in a time that does not tell how near it came or whether there is a record. */
export async function isPassphraseOf(record: string | null, passphrase: string): Promise<boolean> {
  const [, log2N, r, p, salt = "", hash = ""] = (record ?? NOBODY).split("$");
  const cost = { log2N: Number(log2N), r: Number(r), p: Number(p) };
  const given = await hashed(passphrase, { ...cost, salt: Buffer.from(salt, "base64url") });
  return timingSafeEqual(given, Buffer.from(hash, "base64url")) && record !== null;
}

interface Hashing {
  readonly log2N: number;
  readonly r: number;
  readonly p: number;
  readonly salt: Buffer;
}

/** Bytes that scrypt takes for one try, with some room: 128 N r, RFC 7914. */
const ROOM = 2;

/** One after the other: many tries at once would take the memory and the cores of the house. */
let before: Promise<unknown> = Promise.resolve();

function hashed(passphrase: string, { log2N, r, p, salt }: Hashing): Promise<Buffer> {
  const N = 2 ** log2N;
  const options: ScryptOptions = { N, r, p, maxmem: ROOM * 128 * N * r };
  const mine = before.then(
    () =>
      new Promise<Buffer>((resolve, reject) =>
        scrypt(passphrase.normalize("NFKC"), salt, HASH_BYTES, options, (error, hash) =>
          error ? reject(error) : resolve(hash),
        ),
      ),
  );
  before = mine.catch(() => undefined);
  return mine;
}
