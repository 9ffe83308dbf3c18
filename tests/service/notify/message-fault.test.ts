import { createRequire } from "node:module";
import { describe, expect, it } from "vitest";
import { MESSAGE_FAULTS, messageFaultOf } from "../../../service/notify/message-fault.ts";

/** The mail library's own list of codes, as it exports it. */
const CODES = Object.keys(createRequire(import.meta.url)("nodemailer/lib/errors.js") as object).filter(
  (name) => /^E[A-Z0-9]+$/.test(name),
);

describe("why a message did not get through", () => {
  it.each([
    ["mail-econnection", "mail-unreachable"],
    ["mail-edns", "mail-unreachable"],
    ["mail-etls", "mail-unsafe"],
    ["mail-eauth-535", "mail-login"],
    ["mail-eenvelope-550", "mail-address"],
    ["mail-emessage-550", "mail-refused"],
    ["mail-eenvelope-451", "mail-busy"],
    ["mail-emessage-451", "mail-busy"],
    ["mail-failed", "mail-failed"],
    ["mail-estrange", "mail-failed"],
    ["channel-not-set-up", "channel-not-set-up"],
    ["TypeError", "channel-broke"],
    ["", "channel-broke"],
  ])("%s is %s", (fault, kind) => {
    expect(messageFaultOf(fault)).toBe(kind);
  });

  it("every code of the mail library ends in a kind of ours", () => {
    expect(CODES.length).toBeGreaterThan(15);
    for (const code of CODES) {
      const kind = messageFaultOf(`mail-${code.toLowerCase()}`);
      expect(MESSAGE_FAULTS).toContain(kind);
      expect(kind).not.toBe("channel-broke");
    }
  });
});
