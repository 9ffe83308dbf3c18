import type * as z from "zod";
import type { Outcome } from "../../core/problem.ts";
import { answerInText } from "./answer-in-text.ts";
import { feedProblem } from "./feed-problem.ts";
import type { FeedSettings } from "./feed-settings.ts";
import { httpGet } from "./http-get.ts";
import { PlacesAnswer } from "./open-meteo/answer-schema.ts";
import { placesAddress } from "./open-meteo/request.ts";

/** One place found by name. What the gazetteer does not know is null. */
export interface Place {
  readonly id: number;
  readonly name: string;
  readonly latDeg: number;
  readonly lonDeg: number;
  readonly elevationM: number | null;
  /** IANA name. */
  readonly zone: string | null;
  readonly country: string | null;
  readonly countryCode: string | null;
  /** The larger and the smaller district. */
  readonly region: string | null;
  readonly district: string | null;
  readonly population: number | null;
}

/** Shorter names find nothing there, so they are not asked. */
const SHORTEST_NAME = 2;

/** Places by name, best first; an empty list when none is found. `language` is an ISO 639-1 code, "en" if left out. */
export async function searchPlaces(input: {
  readonly name: string;
  readonly feed: FeedSettings;
  readonly language?: string;
  readonly nowUtcMs?: number;
}): Promise<Outcome<Place[]>> {
  const name = input.name.trim();
  if ([...name].length < SHORTEST_NAME) return { ok: true, value: [] };
  const feedRole = "places";
  const language = (input.language ?? "en").slice(0, 2).toLowerCase();
  const url = placesAddress(input.feed, { name, language });
  if (url === null) return { ok: false, problems: [feedProblem("feed-bad-address", { feed: feedRole })] };
  const nowUtcMs = input.nowUtcMs ?? Date.now();
  const got = await httpGet({ feedRole, url, headers: {}, feed: input.feed, nowUtcMs });
  if (!got.ok) return got;
  const answer = answerInText(got.value, { schema: PlacesAnswer, feed: feedRole });
  return answer.ok ? { ok: true, value: answer.value.results.map(placeOf) } : answer;
}

function placeOf(result: z.infer<typeof PlacesAnswer>["results"][number]): Place {
  return {
    id: result.id,
    name: result.name,
    latDeg: result.latitude,
    lonDeg: result.longitude,
    elevationM: result.elevation ?? null,
    zone: result.timezone ?? null,
    country: result.country ?? null,
    countryCode: result.country_code ?? null,
    region: result.admin1 ?? null,
    district: result.admin2 ?? null,
    population: result.population ?? null,
  };
}
