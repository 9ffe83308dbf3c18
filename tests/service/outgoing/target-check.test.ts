import { once } from "node:events";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { Agent, request } from "undici";
import { describe, expect, it } from "vitest";
import { checkTarget, pinnedLookup } from "../../../service/outgoing/target-check.ts";

/** A name server that knows a few names and counts how often it is asked. */
function names(known: Readonly<Record<string, readonly string[]>>) {
  const asked: string[] = [];
  const lookUp = async (host: string) => {
    asked.push(host);
    const addresses = known[host];
    if (addresses === undefined) throw Object.assign(new Error("ENOTFOUND"), { code: "ENOTFOUND" });
    return addresses.map((address) => ({ address }));
  };
  return { asked, lookUp };
}

const OUTSIDE = { "hook.example": ["9.9.9.9"], "both.example": ["9.9.9.9", "192.168.4.7"] };

async function codeOf(host: string, allowedHosts: readonly string[] = []) {
  const { lookUp } = names({ ...OUTSIDE, "inside.example": ["10.1.2.3"], "nowhere.example": ["0.0.0.0"] });
  const checked = await checkTarget(host, { allowedHosts, lookUp });
  return checked.ok ? checked.value.address : checked.problems[0]?.code;
}

describe("a target outside", () => {
  it("is given back with the address that was looked at, after one look", async () => {
    const { asked, lookUp } = names(OUTSIDE);
    const checked = await checkTarget("Hook.Example.", { allowedHosts: [], lookUp });
    expect(checked).toEqual({ ok: true, value: { host: "hook.example", address: "9.9.9.9", family: 4 } });
    expect(asked).toEqual(["hook.example"]);
  });

  it("is refused when nobody knows its name", async () => {
    expect(await codeOf("unknown.example")).toBe("target-unknown-host");
  });
});

describe("a target in the own network", () => {
  it.each([
    "inside.example",
    "both.example",
    "127.0.0.1",
    "[::1]",
    "[::ffff:10.0.0.1]",
    "169.254.169.254",
    "fd00::1",
  ])("%s is refused", async (host) => {
    expect(await codeOf(host)).toBe("target-in-own-network");
  });

  it("is let through when the owner named it, and only that one", async () => {
    expect(await codeOf("inside.example", ["Inside.example"])).toBe("10.1.2.3");
    expect(await codeOf("[::1]", ["::1"])).toBe("::1");
    expect(await codeOf("127.0.0.1", ["inside.example"])).toBe("target-in-own-network");
  });

  it("stays refused, named or not, where no service can be", async () => {
    expect(await codeOf("nowhere.example", ["nowhere.example"])).toBe("target-not-callable");
    expect(await codeOf("255.255.255.255", ["255.255.255.255"])).toBe("target-not-callable");
  });
});

describe("the pinned address", () => {
  it("is the one connected to, whatever the name leads to by then", async () => {
    const server = createServer((_, answer) => answer.end("reached")).listen(0, "127.0.0.1");
    await once(server, "listening");
    const { port } = server.address() as AddressInfo;
    const { lookUp } = names({ "turncoat.invalid": ["127.0.0.1"] });
    const checked = await checkTarget("turncoat.invalid", { allowedHosts: ["turncoat.invalid"], lookUp });
    if (!checked.ok) throw new Error("not checked");
    const agent = new Agent({ connect: { lookup: pinnedLookup(checked.value) } });
    const { body } = await request(`http://turncoat.invalid:${port}/`, { dispatcher: agent });
    expect(await body.text()).toBe("reached");
    await agent.destroy();
    server.close();
  });
});
