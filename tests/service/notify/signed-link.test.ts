import { createHmac } from "node:crypto";
import { describe, expect, it } from "vitest";
import { type LinkClaims, readLink, signedLink } from "../../../service/notify/signed-link.ts";

const KEY = Buffer.alloc(32, 7);
const NOW = Date.parse("2031-05-02T06:00Z");
const CLAIMS: LinkClaims = {
  purpose: "done",
  personId: "ann",
  siteId: "yard",
  madeUtcMs: NOW - 1000,
  deed: { potId: "p1", action: "water" },
  expiresUtcMs: NOW + 1000,
};
const read = (token: string, nowUtcMs = NOW, key = KEY) => readLink(token, { key, nowUtcMs });

describe("a signed link", () => {
  it("brings back what was signed, for a deed, a list and the end of mail", () => {
    const stop = { purpose: "stop-mail", channelId: "mail-0123456789ab" } as const;
    for (const claims of [CLAIMS, { ...CLAIMS, deed: null }, { ...CLAIMS, purpose: "log" as const }, stop]) {
      const token = signedLink(claims, KEY);
      expect(token).toMatch(/^[\w-]+\.[\w-]{22}$/);
      expect(read(token)).toEqual({ ok: true, claims });
    }
  });

  it("is broken once one character of it is another", () => {
    const token = signedLink(CLAIMS, KEY);
    for (let at = 0; at < token.length; at++) {
      // The last character of 16 bytes in base64url carries two bits only; its neighbours decode alike.
      const other = token[at] === "Q" ? "A" : "Q";
      const bent = `${token.slice(0, at)}${other}${token.slice(at + 1)}`;
      const { ok } = read(bent);
      if (at < token.length - 1) expect(ok, `character ${at}`).toBe(false);
    }
  });

  it("of another house, of no signature, or of a longer or shorter one is broken", () => {
    const token = signedLink(CLAIMS, KEY);
    const [body] = token.split(".");
    expect(read(token, NOW, Buffer.alloc(32, 8))).toEqual({ ok: false, fault: "link-broken" });
    const whole = createHmac("sha256", KEY).update(`leebench-link-1.${body}`).digest("base64url");
    for (const bad of ["", ".", `${body}`, `${body}.`, `${body}.${whole}`, `${token}.x`, "a.b.c"])
      expect(read(bad), bad).toEqual({ ok: false, fault: "link-broken" });
  });

  it("is over at its hour; the one that stops mail never is", () => {
    const token = signedLink(CLAIMS, KEY);
    expect(read(token, NOW + 999).ok).toBe(true);
    expect(read(token, NOW + 1000)).toEqual({ ok: false, fault: "link-expired" });
    const stop = signedLink({ purpose: "stop-mail", channelId: "mail-0123456789ab" }, KEY);
    expect(read(stop, NOW + 1e12).ok).toBe(true);
  });

  it("signed with the right key but of an unknown shape is broken", () => {
    for (const parts of [["done"], ["rule", "ann"], { purpose: "done" }, ["stop-mail"], null]) {
      const body = Buffer.from(JSON.stringify(parts)).toString("base64url");
      const mac = createHmac("sha256", KEY).update(`leebench-link-1.${body}`).digest().subarray(0, 16);
      expect(read(`${body}.${mac.toString("base64url")}`).ok).toBe(false);
    }
  });
});
