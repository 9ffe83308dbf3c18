import { generateKeyPairSync, sign } from "node:crypto";

/*
 * A self-signed certificate made on the spot, so that no key lies in the repository: the few fields that a TLS server
 * needs, in DER. Structure: RFC 5280 section 4.1; encoding: ITU-T X.690.
 */

const SEQUENCE = 0x30;
const ECDSA_SHA256_OID = Buffer.from("06082a8648ce3d040302", "hex");
const ALT_NAME_OID = Buffer.from("0603551d11", "hex");
/** 127.0.0.1 and localhost, as RFC 5280 section 4.2.1.6 writes addresses and names. */
const LOOPBACK_NAMES = [der(0x87, Buffer.from([127, 0, 0, 1])), der(0x82, Buffer.from("localhost"))];
const COMMON_NAME_OID = Buffer.from("0603550403", "hex");

export function selfSigned(): { key: string; cert: string } {
  const { privateKey, publicKey } = generateKeyPairSync("ec", { namedCurve: "P-256" });
  const algorithm = der(SEQUENCE, ECDSA_SHA256_OID);
  const name = der(SEQUENCE, der(0x31, der(SEQUENCE, COMMON_NAME_OID, der(0x0c, Buffer.from("loopback")))));
  const utcTime = (text: string) => der(0x17, Buffer.from(text));
  const body = der(
    SEQUENCE,
    der(0xa0, der(0x02, Buffer.from([2]))),
    der(0x02, Buffer.from([1])),
    algorithm,
    name,
    der(SEQUENCE, utcTime("200101000000Z"), utcTime("491231235959Z")),
    name,
    publicKey.export({ type: "spki", format: "der" }),
    der(0xa3, der(SEQUENCE, der(SEQUENCE, ALT_NAME_OID, der(0x04, der(SEQUENCE, ...LOOPBACK_NAMES))))),
  );
  const signature = sign("sha256", body, privateKey);
  const certificate = der(SEQUENCE, body, algorithm, der(0x03, Buffer.from([0]), signature));
  return {
    key: privateKey.export({ type: "pkcs8", format: "pem" }) as string,
    cert: `-----BEGIN CERTIFICATE-----\n${certificate.toString("base64")}\n-----END CERTIFICATE-----\n`,
  };
}

function der(tag: number, ...parts: readonly Buffer[]): Buffer {
  const content = Buffer.concat(parts);
  const { length } = content;
  const head =
    length < 0x80
      ? [tag, length]
      : length < 0x100
        ? [tag, 0x81, length]
        : [tag, 0x82, length >> 8, length & 0xff];
  return Buffer.concat([Buffer.from(head), content]);
}
