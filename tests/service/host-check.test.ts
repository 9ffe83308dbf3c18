import { request } from "node:http";
import { Hono } from "hono";
import { describe, expect, it, onTestFinished } from "vitest";
import { ownNamesOnly } from "../../service/host-check.ts";
import { listen } from "../../service/listen.ts";

/** The house at a host of this machine, asked over HTTP with whatever Host header a browser would send. */
async function houseAt(settings: { host: string; publicHost?: string }) {
  const app = new Hono();
  app.use(ownNamesOnly({ publicHost: null, ...settings }));
  app.all("*", (c) => c.text("pots"));
  const listening = await listen(app, { host: "127.0.0.1", port: 0 });
  onTestFinished(() => listening.close());
  return (host: string, method = "GET") =>
    new Promise<[number, string]>((resolve, reject) => {
      const call = request(listening.url, { method, headers: { host } }, (answer) => {
        answer.setEncoding("utf8");
        let text = "";
        answer.on("data", (part: string) => {
          text += part;
        });
        answer.on("end", () => resolve([answer.statusCode ?? 0, text]));
      });
      call.on("error", reject).end();
    });
}

describe("a house on this machine", () => {
  it.each([
    "127.0.0.1",
    "127.0.0.1:4680",
    "localhost:9",
    "LocalHost",
    "localhost.:80",
    "[::1]:4680",
    "[::1]",
    "127.8.8.8:1",
  ])("answers to %s", async (host) => {
    const ask = await houseAt({ host: "127.8.8.8" });
    expect(await ask(host)).toEqual([200, "pots"]);
  });

  // RFC 9110, 15.5.20: 421 where a server is asked for a name that it does not answer for.
  it.each([
    "rebound.example",
    "rebound.example:4680",
    "127.0.0.1.rebound.example",
    "localhost.rebound.example:80",
    "127.0.0.2",
    "192.0.2.7",
    "[::2]",
    "0.0.0.0",
  ])("turns away %s, whatever it is asked", async (host) => {
    const ask = await houseAt({ host: "127.0.0.1" });
    for (const method of ["GET", "POST"]) {
      const [status, line] = await ask(host, method);
      expect(status).toBe(421);
      expect(line).toMatch(/^This house does not go by that name\. .*LEEBENCH_PUBLIC_HOST.*\n$/);
      expect(line).not.toContain("rebound");
    }
  });

  it("answers to the name of the proxy in front of it", async () => {
    const ask = await houseAt({ host: "127.0.0.1", publicHost: "Bench.example" });
    expect((await ask("bench.example"))[0]).toBe(200);
    expect((await ask("bench.example:443"))[0]).toBe(200);
    expect((await ask("other.example"))[0]).toBe(421);
  });
});

describe("a house on the network", () => {
  it("answers to every name, since it asks for the passphrase", async () => {
    const ask = await houseAt({ host: "0.0.0.0" });
    expect((await ask("bench.lan:4680"))[0]).toBe(200);
  });
});
