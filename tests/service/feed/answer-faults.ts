import { type FaultCase, onForecast, sends } from "./fault-case.ts";
import { forecastBody } from "./wire-answers.ts";

const honest = () => JSON.stringify(forecastBody());
const html = { "content-type": "text/html" };
const refusal = (reason: string) => JSON.stringify({ error: true, reason });

/** Whole answers: statuses, and bodies that are not what was asked for. */
export const ANSWER_FAULTS: readonly FaultCase[] = [
  onForecast(
    "400 with a reason",
    "refused: feed-rejected, report",
    sends(refusal("Forecast days is invalid."), { status: 400 }),
  ),
  onForecast(
    "400 for a wrong key",
    "refused: feed-denied, check-key",
    sends(refusal("The supplied API key is invalid."), { status: 400 }),
  ),
  onForecast("403", "refused: feed-denied, check-key", sends("no", { status: 403 })),
  onForecast(
    "404 of another server",
    "refused: feed-not-found, check-address",
    sends("<html>", { status: 404, headers: html }),
  ),
  onForecast(
    "429 without a time",
    "refused: feed-throttled, wait",
    sends(refusal("Minutely limit exceeded."), { status: 429 }),
  ),
  onForecast(
    "429 with Retry-After",
    "refused: feed-throttled, wait 90 s",
    sends(refusal("Too many."), { status: 429, headers: { "retry-after": "90" } }),
  ),
  onForecast(
    "429 with Retry-After as a date, by a clock of last century",
    "refused: feed-throttled, wait 120 s",
    sends(refusal("Too many."), {
      status: 429,
      headers: { date: "Fri, 31 Dec 1999 23:57:59 GMT", "retry-after": "Fri, 31 Dec 1999 23:59:59 GMT" },
    }),
  ),
  onForecast(
    "500",
    "refused: feed-server-error, wait",
    sends(refusal("Something went wrong."), { status: 500 }),
  ),
  onForecast(
    "502 with a page of HTML",
    "refused: feed-server-error, wait",
    sends("<html><h1>Bad</h1>", { status: 502, headers: html }),
  ),
  onForecast("204 without a word", "refused: feed-unexpected-status, report", sends("", { status: 204 })),
  onForecast(
    "200 with a page of HTML",
    "refused: feed-not-json, wait",
    sends("<!doctype html><p>Log in", { headers: html }),
  ),
  onForecast(
    "200 with an error as text",
    "refused: feed-not-json, wait",
    sends("Unexpected error while streaming data"),
  ),
  onForecast(
    "200 that turns into an error text",
    "refused: feed-not-json, wait",
    sends(`${honest().slice(0, 900)}Unexpected error while streaming data: lost`),
  ),
  onForecast("200 with half a body", "refused: feed-not-json, wait", sends(honest().slice(0, 2000))),
  onForecast("200 with nothing", "refused: feed-not-json, wait", sends("")),
  onForecast("200 with an error as JSON", "refused: feed-rejected, report", sends(refusal("No data."))),
  onForecast("200 with other JSON", "refused: feed-bad-shape, report", sends('{"hello":"world"}')),
  onForecast(
    "200 with brackets a hundred thousand deep",
    "refused: feed-not-json, wait",
    sends("[".repeat(100_000)),
  ),
  onForecast(
    "true Latin-1, named",
    "used, 4 members",
    sends(Buffer.from(honest(), "latin1"), {
      headers: { "content-type": "application/json; charset=iso-8859-1" },
    }),
  ),
  onForecast(
    "Latin-1 that says UTF-8",
    "refused: feed-bad-text, report",
    sends(Buffer.from(honest(), "latin1")),
  ),
  onForecast(
    "charset that nobody knows",
    "refused: feed-bad-text, report",
    sends(honest(), { headers: { "content-type": "application/json; charset=no-such-set" } }),
  ),
  onForecast(
    "bare nan for the coordinates",
    "used, 4 members, feed-nan-repaired",
    sends(honest().replace('"latitude":12.25', '"latitude":-nan')),
  ),
];
