import { afterEach, describe, expect, it } from "vitest";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { lookUpElevation } from "../../../service/feed/look-up-elevation.ts";
import { searchPlaces } from "../../../service/feed/search-places.ts";
import { type Loopback, serveHttp } from "./loopback-server.ts";

const open: Loopback[] = [];
afterEach(async () => {
  for (const server of open.splice(0)) await server.close();
});

async function answering(body: string, status = 200) {
  const urls: string[] = [];
  const server = await serveHttp((request, response) => {
    urls.push(request.url ?? "");
    response.writeHead(status).end(body);
  });
  open.push(server);
  const { url } = server;
  const feed = { ...DEFAULT_FEED_SETTINGS, geocodingUrl: `${url}/sub/`, elevationUrl: url, timeoutMs: 300 };
  return { feed, urls };
}

describe("places by name", () => {
  it("an answer without results means none found", async () => {
    const { feed } = await answering('{"generationtime_ms":0.4}');
    expect(await searchPlaces({ name: "Nowherehaven", feed })).toEqual({ ok: true, value: [] });
  });

  it("a name of one letter is not asked", async () => {
    const { feed, urls } = await answering("{}");
    expect(await searchPlaces({ name: " x ", feed })).toEqual({ ok: true, value: [] });
    expect(urls).toEqual([]);
  });

  it("a coordinate that was dropped for being zero is zero", async () => {
    const { feed } = await answering('{"results":[{"id":1,"name":"Line","longitude":6.6}]}');
    const found = await searchPlaces({ name: "Line", feed });
    expect(found.ok && found.value[0]).toMatchObject({
      latDeg: 0,
      lonDeg: 6.6,
      zone: null,
      elevationM: null,
    });
  });

  it("letters of any script arrive whole, under the base's own path, in the grower's language", async () => {
    const { feed, urls } = await answering("{}");
    await searchPlaces({ name: "Åse & কলকাতা", feed, language: "bn-IN" });
    const url = new URL(urls[0]!, "http://loopback");
    expect(url.pathname).toBe("/sub/v1/search");
    expect(url.searchParams.get("name")).toBe("Åse & কলকাতা");
    expect(url.searchParams.get("language")).toBe("bn");
  });

  it.each([
    ["<html>", 200, "feed-not-json"],
    ['{"results":[{"id":1,"name":"X","latitude":91,"longitude":0}]}', 200, "feed-bad-shape"],
    ['{"error":true,"reason":"Parameter count must be between 1 and 100."}', 400, "feed-rejected"],
  ])("%s with %d is %s", async (body, status, code) => {
    const { feed } = await answering(body, status);
    const found = await searchPlaces({ name: "Port", feed });
    expect(found.ok ? "found" : found.problems[0]?.code).toBe(code);
  });
});

describe("height of a point", () => {
  it.each([
    ['{"elevation":[38.0]}', 38],
    ['{"elevation":[-3]}', -3],
    ['{"elevation":[nan]}', "feed-no-elevation"],
    ['{"elevation":[]}', "feed-bad-shape"],
  ])("%s is %s", async (body, expected) => {
    const { feed } = await answering(body);
    const height = await lookUpElevation({ latDeg: 1.23456, lonDeg: 2, feed });
    expect(height.ok ? height.value : height.problems[0]?.code).toBe(expected);
  });
});
