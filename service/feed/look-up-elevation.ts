import type { Outcome } from "../../core/problem.ts";
import { answerInText } from "./answer-in-text.ts";
import { feedProblem } from "./feed-problem.ts";
import type { FeedSettings } from "./feed-settings.ts";
import { httpGet } from "./http-get.ts";
import { ElevationAnswer } from "./open-meteo/answer-schema.ts";
import { elevationAddress } from "./open-meteo/request.ts";

/** Height of the ground above the sea at a point, m, from the feed's terrain model of some 90 m. */
export async function lookUpElevation(input: {
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly feed: FeedSettings;
  readonly nowUtcMs?: number;
}): Promise<Outcome<number>> {
  const feedRole = "elevation";
  const url = elevationAddress(input.feed, input);
  if (url === null) return { ok: false, problems: [feedProblem("feed-bad-address", { feed: feedRole })] };
  const nowUtcMs = input.nowUtcMs ?? Date.now();
  const got = await httpGet({ feedRole, url, headers: {}, feed: input.feed, nowUtcMs });
  if (!got.ok) return got;
  const answer = answerInText(got.value, { schema: ElevationAnswer, feed: feedRole });
  if (!answer.ok) return answer;
  const elevationM = answer.value.elevation[0];
  if (elevationM !== null && elevationM !== undefined) return { ok: true, value: elevationM };
  return {
    ok: false,
    problems: [feedProblem("feed-no-elevation", { feed: feedRole, host: got.value.host })],
  };
}
