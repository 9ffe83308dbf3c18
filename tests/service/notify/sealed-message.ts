import { createDecipheriv, createECDH, hkdfSync } from "node:crypto";

export interface Subscriber {
  readonly privateKey: Buffer;
  readonly publicKey: Buffer;
  readonly auth: Buffer;
}

/**
 * Opens a pushed message as a browser does, written from RFC 8291 section 3.4 and RFC 8188 section 2 on the primitives of
 * Node alone, so that it shares no code with what seals it.
 */
export function openSealed(body: Buffer, { privateKey, publicKey, auth }: Subscriber): string {
  const salt = body.subarray(0, 16);
  const keyLength = body[20]!;
  const senderKey = body.subarray(21, 21 + keyLength);
  const sealed = body.subarray(21 + keyLength);
  const own = createECDH("prime256v1");
  own.setPrivateKey(privateKey);
  const shared = own.computeSecret(senderKey);
  const info = Buffer.concat([Buffer.from("WebPush: info\0"), publicKey, senderKey]);
  const secret = Buffer.from(hkdfSync("sha256", shared, auth, info, 32));
  const derived = (label: string, length: number) =>
    Buffer.from(hkdfSync("sha256", secret, salt, Buffer.from(`Content-Encoding: ${label}\0`), length));
  const open = createDecipheriv("aes-128-gcm", derived("aes128gcm", 16), derived("nonce", 12));
  open.setAuthTag(sealed.subarray(-16));
  const padded = Buffer.concat([open.update(sealed.subarray(0, -16)), open.final()]);
  // One record: the text, a 2 that says it is the last, and zeros.
  return padded.subarray(0, padded.lastIndexOf(2)).toString("utf8");
}
