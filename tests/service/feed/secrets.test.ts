import { afterEach, describe, expect, it } from "vitest";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { fetchWeather } from "../../../service/feed/fetch-weather.ts";
import { httpGet } from "../../../service/feed/http-get.ts";
import { type Loopback, serveHttp } from "./loopback-server.ts";
import { forecastBody, NOW_UTC_MS } from "./wire-answers.ts";

const KEY = "k3y-of-the-house";
const SITE = { id: "s", name: "S", latDeg: 12.3456789, lonDeg: -45.6543219, elevationM: 20.4, zone: "UTC" };

const open: Loopback[] = [];
afterEach(async () => {
  for (const server of open.splice(0)) await server.close();
});

interface Seen {
  url: string;
  key: string | undefined;
  agent: string | undefined;
}

async function listening(answer: (url: string) => { status: number; location?: string; body?: string }) {
  const seen: Seen[] = [];
  const server = await serveHttp((request, response) => {
    const { url = "", headers } = request;
    seen.push({ url, key: headers["x-api-key"] as string | undefined, agent: headers["user-agent"] });
    const { status, location, body = "" } = answer(url);
    response.writeHead(status, location === undefined ? {} : { location }).end(body);
  });
  open.push(server);
  return { seen, url: server.url };
}

const fetched = (feed: object) =>
  fetchWeather({
    site: SITE,
    feed: { ...DEFAULT_FEED_SETTINGS, timeoutMs: 1000, apiKey: KEY, ...feed },
    nowUtcMs: NOW_UTC_MS,
    pastDays: 2,
  });

describe("what leaves the house", () => {
  it("the key in a header, the place to three decimals, nothing else of either", async () => {
    const server = await listening(() => ({ status: 200, body: JSON.stringify(forecastBody()) }));
    const base = { forecastUrl: server.url, ensembleUrl: server.url, fallbackUrl: server.url };
    expect((await fetched(base)).ok).toBe(true);
    expect(server.seen.length).toBe(2);
    for (const { url, key, agent } of server.seen) {
      expect(agent).toMatch(/^leebench\/[\d.]+$/);
      expect(key).toBe(KEY);
      expect(url).not.toContain(KEY);
      const query = new URL(url, server.url).searchParams;
      expect(query.get("latitude")).toBe("12.346");
      expect(query.get("longitude")).toBe("-45.654");
      expect(query.get("elevation")).toBe("20");
      expect(query.get("timezone")).toBe("GMT");
    }
  });

  it("nothing at all to another host that a redirect names, or that no setting names", async () => {
    const elsewhere = await listening(() => ({ status: 200, body: JSON.stringify(forecastBody()) }));
    const home = await listening(() => ({ status: 302, location: `${elsewhere.url}/v1/forecast` }));
    const nowhere = "http://127.0.0.1:9";
    const feed = {
      ...DEFAULT_FEED_SETTINGS,
      forecastUrl: home.url,
      ensembleUrl: nowhere,
      geocodingUrl: nowhere,
      elevationUrl: nowhere,
      fallbackUrl: nowhere,
    };
    expect((await fetched(feed)).ok).toBe(false);
    const url = new URL("/v1/forecast", elsewhere.url);
    const asked = await httpGet({ feedRole: "forecast", url, headers: {}, feed, nowUtcMs: NOW_UTC_MS });
    expect(asked.ok ? "called" : asked.problems[0]?.code).toBe("feed-bad-address");
    expect([home.seen.length, elsewhere.seen.length]).toEqual([1, 0]);
  });

  it("no key to the fallback, which gets the contact instead", async () => {
    const server = await listening(() => ({ status: 500 }));
    const contact = "gardener@leebench.example";
    await fetched({ forecastUrl: server.url, fallbackUrl: server.url, contact });
    const call = server.seen.find((request) => request.url.startsWith("/weatherapi/"))!;
    expect(call.key).toBeUndefined();
    expect(call.agent).toMatch(/^leebench\/\S+ gardener@leebench\.example$/);
    const query = new URL(call.url, server.url).searchParams;
    expect([query.get("lat"), query.get("lon"), query.get("altitude")]).toEqual(["12.346", "-45.654", "20"]);
  });
});

describe("what a problem tells", () => {
  it("neither key nor place, even when the server repeats them", async () => {
    const server = await listening((url) => ({
      status: 400,
      body: JSON.stringify({ error: true, reason: `no ${KEY} for ${url}`.slice(0, 40) }),
    }));
    const userinfo = server.url.replace("http://", "http://user:hidden@");
    const answer = await fetched({ forecastUrl: userinfo, ensembleUrl: userinfo, fallbackUrl: "" });
    expect(answer.ok).toBe(false);
    const told = JSON.stringify(answer);
    expect(told).toContain("***");
    for (const secret of [KEY, "12.34", "45.65", "hidden"]) expect(told).not.toContain(secret);
  });
});
