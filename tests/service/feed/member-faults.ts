import { type FaultCase, onEnsemble, sends, spoiltEnsemble } from "./fault-case.ts";
import { ensembleBody } from "./wire-answers.ts";

/** The ensemble beside an honest forecast: the forecast is used whatever happens here. */
export const MEMBER_FAULTS: readonly FaultCase[] = [
  onEnsemble("ensemble host down", "used, no members, feed-cut-short", (request) => request.socket.destroy()),
  onEnsemble("ensemble throttled", "used, no members, feed-throttled", sends("{}", { status: 429 })),
  onEnsemble("ensemble of HTML", "used, no members, feed-not-json", sends("<html>")),
  onEnsemble("ten megabytes of members", "used, no members, feed-too-large", (_, response) => {
    response.writeHead(200).end(JSON.stringify(ensembleBody(300)).padEnd(10 * 1024 * 1024));
  }),
  spoiltEnsemble("model name at every key", "used, 5 members", () => ensembleBody(5, "_some_model_eps")),
  spoiltEnsemble("no temperature among the keys", "used, no members, feed-no-members", (body) => {
    for (const key of Object.keys(body.hourly)) if (key.startsWith("temperature")) delete body.hourly[key];
    return body;
  }),
  spoiltEnsemble("one member of another length", "used, 4 members", (body) => {
    body.hourly.temperature_2m_member02 = body.hourly.temperature_2m_member02!.slice(1);
    return body;
  }),
  spoiltEnsemble("ensemble of last year", "used, no members, feed-no-temperature", (body) => {
    body.hourly.time = body.hourly.time.map((stamp) => Number(stamp) - 365 * 86_400);
    return body;
  }),
];
