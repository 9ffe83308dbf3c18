import { describe, expect, it } from "vitest";
import { guardedHouse } from "./guarded-house.ts";

const VIA = { "x-forwarded-for": "192.0.2.7", "x-forwarded-proto": "https", host: "bench.example" };

describe("a house behind a proxy", () => {
  it("shown under a path has every address of its pages under it", async () => {
    const house = await guardedHouse({
      LEEBENCH_PUBLIC_HOST: "bench.example",
      LEEBENCH_BASE_PATH: "/garden/bench",
    });
    const cookie = (await house.signedIn("owner")).cookie.replace("leebench", "__Host-leebench");
    const headers = { ...VIA, cookie };
    const page = await (await house.app.request("/garden/bench/pots", { headers })).text();
    const addresses = [...page.matchAll(/(?:href|src|action|formaction)="([^"]*)"/g)].map(
      ([, to]) => to ?? "",
    );
    expect(addresses.length).toBeGreaterThan(10);
    expect(addresses.filter((to) => to.startsWith("/") && !to.startsWith("/garden/bench/"))).toEqual([]);
    const manifest = await house.app.request("/garden/bench/app.webmanifest", { headers });
    expect(JSON.stringify(await manifest.json())).not.toMatch(/":"\//);
    const away = await house.app.request("/garden/bench/sky", { headers: { ...VIA, accept: "text/html" } });
    expect(away.headers.get("location")).toBe("/garden/bench/sign-in?back=%2Fsky");
  });

  it("that names the path itself is believed, but nobody else is", async () => {
    const house = await guardedHouse({ LEEBENCH_PUBLIC_HOST: "bench.example" });
    const cookie = (await house.signedIn("owner")).cookie.replace("leebench", "__Host-leebench");
    const named = { ...VIA, cookie, "x-forwarded-prefix": "/b" };
    expect(await (await house.app.request("/pots", { headers: named })).text()).toContain(
      'href="/b/style.css"',
    );
    for (const prefix of ["//evil.example", "/a/../b", '/"><script>', "https://evil.example"]) {
      const page = await house.app.request("/pots", { headers: { ...named, "x-forwarded-prefix": prefix } });
      expect(await page.text(), prefix).toContain('href="/style.css"');
    }
    const plain = await guardedHouse();
    const page = await plain.app.request("/pots", { headers: { "x-forwarded-prefix": "/b" } });
    expect(await page.text()).toContain('href="/style.css"');
  });

  it("counts the requests of each device behind it", async () => {
    const { app, clock } = await guardedHouse({ LEEBENCH_PUBLIC_HOST: "bench.example" });
    const ask = async (address: string) =>
      (await app.request("/healthz", { headers: { ...VIA, "x-forwarded-for": `203.0.113.1, ${address}` } }))
        .status;
    let held = 0;
    for (let count = 0; count < 310; count++) held += (await ask("192.0.2.7")) === 429 ? 1 : 0;
    expect(held).toBe(10);
    expect(await ask("192.0.2.8")).toBe(200);
    clock.nowUtcMs += 1000;
    expect(await ask("192.0.2.7")).toBe(200);
  });
});

describe("an answer", () => {
  it("has an id of its own, whatever the request brought", async () => {
    const { app } = await guardedHouse();
    const ids = await Promise.all(
      [1, 2].map(async () =>
        (await app.request("/pots", { headers: { "x-request-id": "mine" } })).headers.get("x-request-id"),
      ),
    );
    expect(ids[0]).toMatch(/^[0-9a-f-]{36}$/);
    expect(ids[0]).not.toBe(ids[1]);
  });

  it("is never shown in a frame and says so on every kind of page", async () => {
    const { app } = await guardedHouse({ LEEBENCH_HOST: "0.0.0.0" });
    for (const path of ["/pots", "/healthz", "/claim", "/style.css", "/nowhere", "/api/v1/nowhere"]) {
      const { headers } = await app.request(path);
      expect(headers.get("content-security-policy"), path).toContain("frame-ancestors 'none'");
      expect(headers.get("x-frame-options"), path).toBe("DENY");
      expect(headers.get("x-content-type-options"), path).toBe("nosniff");
    }
  });
});
