import { Agent, request } from "undici";
import type { Outcome } from "../../core/problem.ts";
import { redirectOnHost } from "../outgoing/redirect-on-host.ts";
import { DAILY_CALL_CAP, takeCall } from "./call-cap.ts";
import { CALLER } from "./caller.ts";
import { type FeedRole, feedProblem } from "./feed-problem.ts";
import type { FeedSettings } from "./feed-settings.ts";
import { readBody } from "./read-body.ts";
import { statusFailure } from "./status-failure.ts";
import { transportFailure } from "./transport-failure.ts";

export interface GetRequest {
  readonly feedRole: FeedRole;
  readonly url: URL;
  readonly headers: Readonly<Record<string, string>>;
  readonly feed: FeedSettings;
  readonly nowUtcMs: number;
}

export interface GetAnswer {
  readonly status: number;
  readonly text: string;
  readonly host: string;
  readonly expires: string | null;
  readonly lastModified: string | null;
}

/** Times the single timeout after which the whole call is given up, so that a body in drips cannot hold it. */
const WHOLE_CALL_FACTOR = 3;
const ALWAYS = { "accept-encoding": "gzip", accept: "application/json", "user-agent": CALLER };
const MOST_REDIRECTS = 3;
const REDIRECTS = new Set([301, 302, 303, 307, 308]);
/** Answers that are used: the text, a text from a version about to go, and "as before". */
const USABLE = new Set([200, 203, 304]);

/** Calls under way, so that two jobs that want the same at the same moment make one call. */
const underWay = new Map<string, Promise<Outcome<GetAnswer>>>();

/** One GET with every limit set; expected failures are problems, never thrown. */
export function httpGet(get: GetRequest): Promise<Outcome<GetAnswer>> {
  const key = `${get.feedRole} ${get.url.href}`;
  const known = underWay.get(key);
  if (known !== undefined) return known;
  const call = limited(get).finally(() => underWay.delete(key));
  underWay.set(key, call);
  return call;
}

async function limited(get: GetRequest): Promise<Outcome<GetAnswer>> {
  const { timeoutMs } = get.feed;
  const agent = new Agent({
    connect: { timeout: timeoutMs },
    headersTimeout: timeoutMs,
    bodyTimeout: timeoutMs,
  });
  const signal = AbortSignal.timeout(WHOLE_CALL_FACTOR * timeoutMs);
  try {
    return await followed(get, { agent, signal });
  } catch (error) {
    const problem = transportFailure(error, { feed: get.feedRole, host: get.url.host });
    return { ok: false, problems: [problem] };
  } finally {
    await agent.destroy();
  }
}

type Line = { readonly agent: Agent; readonly signal: AbortSignal };

async function followed(get: GetRequest, line: Line): Promise<Outcome<GetAnswer>> {
  if (!isConfigured(get)) return failure(get, "feed-bad-address", { host: get.url.host });
  let url = get.url;
  for (let hop = 0; hop <= MOST_REDIRECTS; hop += 1) {
    const answer = await asked({ ...get, url }, line);
    if (!answer.ok || answer.value.location === null) return answer;
    const next = redirectOnHost(answer.value.location, url);
    if (next === null) break;
    url = next;
  }
  return failure(get, "feed-redirected", { host: url.host });
}

async function asked(get: GetRequest, line: Line): Promise<Outcome<GetAnswer & { location: string | null }>> {
  const where = { feed: get.feedRole, host: get.url.host };
  const cap = get.feed.dailyCallCap ?? DAILY_CALL_CAP;
  if (!takeCall(get.url.origin, { nowUtcMs: get.nowUtcMs, cap })) {
    return failure(get, "feed-budget-spent", { host: where.host, callCap: cap });
  }
  const { statusCode, headers, body } = await request(get.url, {
    method: "GET",
    dispatcher: line.agent,
    signal: line.signal,
    headers: { ...ALWAYS, ...headersFor(get) },
  });
  const header = (name: string) => firstOf(headers[name]);
  const text = await readBody({
    body,
    encoding: (header("content-encoding") ?? "").toLowerCase(),
    contentType: header("content-type") ?? "",
    maxBodyBytes: get.feed.maxBodyBytes,
  });
  const location = REDIRECTS.has(statusCode) ? (header("location") ?? "") : null;
  if (location === null && !USABLE.has(statusCode)) {
    const refused = {
      status: statusCode,
      text,
      retryAfter: header("retry-after"),
      date: header("date"),
      nowUtcMs: get.nowUtcMs,
    };
    return { ok: false, problems: [statusFailure(refused, { ...where, secret: get.feed.apiKey })] };
  }
  const kept = { expires: header("expires"), lastModified: header("last-modified") };
  return { ok: true, value: { status: statusCode, text, host: where.host, location, ...kept } };
}

/** The key goes to the primary feed's own hosts over the address that was set, and nowhere a redirect may lead. */
function headersFor(get: GetRequest): Readonly<Record<string, string>> {
  const { apiKey } = get.feed;
  if (apiKey === undefined || get.feedRole === "fallback") return get.headers;
  return isAmong(primaryBases(get.feed), get.url) ? { ...get.headers, "x-api-key": apiKey } : get.headers;
}

/** Whatever a caller hands in, only the hosts of the settings are called. */
function isConfigured({ feed, url }: GetRequest): boolean {
  return isAmong([...primaryBases(feed), feed.fallbackUrl], url);
}

function primaryBases(feed: FeedSettings): string[] {
  const { forecastUrl, ensembleUrl, geocodingUrl, elevationUrl, archiveUrl, previousRunsUrl } = feed;
  return [forecastUrl, ensembleUrl, geocodingUrl, elevationUrl, archiveUrl, previousRunsUrl];
}

function isAmong(bases: readonly string[], url: URL): boolean {
  return bases.some((base) => URL.canParse(base) && new URL(base).origin === url.origin);
}

function failure(get: GetRequest, code: Parameters<typeof feedProblem>[0], data: Record<string, unknown>) {
  return { ok: false as const, problems: [feedProblem(code, { feed: get.feedRole, ...data })] };
}

function firstOf(value: string | string[] | undefined): string | null {
  return (Array.isArray(value) ? value[0] : value) ?? null;
}
