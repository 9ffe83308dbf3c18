import type { RequestListener } from "node:http";
import { afterEach, describe, expect, it } from "vitest";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import type { KeptAnswer } from "../../../service/feed/feed-state.ts";
import { fetchWeather } from "../../../service/feed/fetch-weather.ts";
import { pullFallback } from "../../../service/feed/met-norway/pull.ts";
import { type Loopback, serveHttp } from "./loopback-server.ts";
import { fallbackBody, NOW_UTC_MS } from "./wire-answers.ts";

const HOUR_MS = 3_600_000;
const POINT = { latDeg: 12.3, lonDeg: 45.6, elevationM: 20 };

const open: Loopback[] = [];
afterEach(async () => {
  for (const server of open.splice(0)) await server.close();
});

async function feedAnswering(listener: RequestListener, contact = "tests@leebench.example") {
  const server = await serveHttp(listener);
  open.push(server);
  return { ...DEFAULT_FEED_SETTINGS, fallbackUrl: server.url, timeoutMs: 1000, contact };
}

async function pulled(listener: RequestListener, more: { kept?: KeptAnswer; contact?: string } = {}) {
  const feed = await feedAnswering(listener, more.contact);
  return pullFallback({ feed, point: POINT, nowUtcMs: NOW_UTC_MS, kept: more.kept ?? null });
}

const answering =
  (status: number, body: string, headers = {}): RequestListener =>
  (_, response) => {
    response.writeHead(status, headers).end(body);
  };
const honest = () => JSON.stringify(fallbackBody());

describe("what the fallback answers", () => {
  it.each([
    ["forbidden", answering(403, "<html>"), "feed-denied", "check-contact"],
    ["outside its cover", answering(422, ""), "feed-not-covered", "check-address"],
    ["throttled", answering(429, ""), "feed-throttled", "wait"],
    ["a bad request in HTML", answering(400, "<html>"), "feed-rejected", "report"],
    ["nothing new, though we kept nothing", answering(304, ""), "feed-unexpected-status", "report"],
    ["another shape", answering(200, '{"type":"Feature"}'), "feed-bad-shape", "report"],
  ])("%s", async (_, listener, code, next) => {
    const answer = await pulled(listener);
    expect(answer.ok ? "used" : [answer.problems[0]?.code, answer.problems[0]?.data?.next]).toEqual([
      code,
      next,
    ]);
  });

  it("203 is used and said to be about to go", async () => {
    const answer = await pulled(answering(203, honest()));
    expect(answer.ok && answer.value.notes[0]?.code).toBe("feed-deprecated");
  });

  it("without a contact it is not asked", async () => {
    let calls = 0;
    const answer = await pulled(
      (_, response) => {
        calls += 1;
        response.end();
      },
      { contact: "  " },
    );
    expect(answer.ok ? "used" : answer.problems[0]?.data?.next).toBe("check-contact");
    expect(calls).toBe(0);
  });
});

describe("what is kept of it", () => {
  it("body, expiry and date of change; half an hour where no expiry is told, hours at most", async () => {
    const lastModified = "Wed, 13 May 2026 11:40:00 GMT";
    const kept = async (headers: Record<string, string>) => {
      const answer = await pulled(answering(200, honest(), headers));
      if (!answer.ok) throw new Error(answer.problems[0]?.code);
      return answer.value.kept;
    };
    expect(await kept({ "last-modified": lastModified })).toMatchObject({
      lastModified,
      fetchedUtcMs: NOW_UTC_MS,
      expiresUtcMs: NOW_UTC_MS + HOUR_MS / 2,
    });
    const nextYear = await kept({ expires: "Thu, 13 May 2027 12:00:00 GMT" });
    expect(nextYear.expiresUtcMs).toBe(NOW_UTC_MS + 6 * HOUR_MS);
    const past = await kept({ expires: "Tue, 12 May 2026 12:00:00 GMT" });
    expect(past.expiresUtcMs).toBe(NOW_UTC_MS);
  });

  it("is not used for another place", async () => {
    let since: string | undefined = "not asked";
    const listener: RequestListener = (request, response) => {
      since = request.headers["if-modified-since"];
      response.end(honest());
    };
    const kept = {
      address: "http://127.0.0.1:9/elsewhere",
      text: "",
      fetchedUtcMs: NOW_UTC_MS,
      expiresUtcMs: NOW_UTC_MS + HOUR_MS,
      lastModified: "Wed, 13 May 2026 11:40:00 GMT",
    };
    expect((await pulled(listener, { kept })).ok).toBe(true);
    expect(since).toBeUndefined();
  });

  it("is let go when it has run out and the feed has nothing newer", async () => {
    let answers = 0;
    const feed = await feedAnswering((request, response) => {
      answers += 1;
      if (request.url?.startsWith("/v1/")) response.writeHead(503).end();
      else if (request.headers["if-modified-since"]) response.writeHead(304).end();
      else response.writeHead(200, { "last-modified": "Wed, 13 May 2026 11:40:00 GMT" }).end(honest());
    });
    const site = { id: "k", name: "K", zone: "UTC", ...POINT };
    const ask = { site, feed: { ...feed, forecastUrl: feed.fallbackUrl }, pastDays: 2 };
    const first = await fetchWeather({ ...ask, nowUtcMs: NOW_UTC_MS });
    expect(first.ok && first.state.kept).not.toBeNull();
    const later = NOW_UTC_MS + 80 * HOUR_MS;
    const second = await fetchWeather({ ...ask, nowUtcMs: later, state: first.state });
    expect(second.ok ? "used" : second.problems.map((problem) => problem.code)).toEqual([
      "feed-server-error",
      "feed-wrong-time",
    ]);
    expect(second.state.kept).toBeNull();
    expect(answers).toBe(4);
  });
});
