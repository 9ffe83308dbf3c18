import { gunzipSync } from "node:zlib";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { packedPage, pageInParts, plainPage } from "../../../service/pages/page-in-parts.ts";

const OWN_BYTES = 28;
const text = fc.oneof(
  fc.string({ maxLength: 40 }),
  fc.string({ unit: "grapheme", maxLength: 40 }),
  fc.constantFrom("", '<input name="formId" value="', '-1" />', "a".repeat(40_000)),
);
const own = fc.string({
  unit: fc.constantFrom(..."0123456789abcdef"),
  minLength: OWN_BYTES,
  maxLength: OWN_BYTES,
});

describe("a page kept in parts", () => {
  it("comes whole, with the reader's own ids, plain and out of any gzip reader (RFC 1952, here zlib's)", () => {
    fc.assert(
      fc.property(
        fc.array(text, { minLength: 1, maxLength: 12 }),
        fc.array(own, { minLength: 1, maxLength: 3 }),
        (pieces, owns) => {
          const parts = pageInParts(
            pieces.map((piece) => Buffer.from(piece)),
            OWN_BYTES,
          );
          for (const id of owns) {
            const whole = Buffer.from(pieces.join(id)).toString();
            expect(plainPage(parts, Buffer.from(id)).toString()).toBe(whole);
            expect(gunzipSync(packedPage(parts, Buffer.from(id))).toString()).toBe(whole);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});
