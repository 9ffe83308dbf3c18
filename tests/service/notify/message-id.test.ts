import fc from "fast-check";
import { expect, it } from "vitest";
import { messageId } from "../../../service/notify/message-id.ts";

const part = fc.oneof(fc.constantFrom("a", "b"), fc.string());
const parts = fc.record({
  houseId: part,
  siteId: part,
  kind: fc.constantFrom("morning", "amendment-1"),
  channel: fc.constantFrom("log", "mail"),
  forDay: fc.constantFrom("2031-05-02", "2031-05-03"),
});

it("the same message has the same id, another message another", () => {
  fc.assert(
    fc.property(parts, parts, (one, other) => {
      const isSame =
        JSON.stringify(Object.entries(one).sort()) === JSON.stringify(Object.entries(other).sort());
      expect(messageId({ ...one }) === messageId(other)).toBe(isSame);
    }),
  );
});

it("an id can stand in a mail header and tells nothing of the house", () => {
  fc.assert(
    fc.property(parts, (one) => {
      expect(messageId(one)).toMatch(/^\d{4}-\d\d-\d\d\.(morning|amendment-1)\.(log|mail)\.[0-9a-f]{24}$/);
    }),
  );
});
