import { z } from "zod";
import type { Problem } from "../../../core/problem.ts";
import { lookUpElevation } from "../../feed/look-up-elevation.ts";
import { searchPlaces } from "../../feed/search-places.ts";
import type { Refusal } from "../../problem-answer.ts";
import type { ApiRoute } from "../api-route.ts";

const group = "site";

const Place = z.object({
  id: z.int(),
  name: z.string(),
  latDeg: z.number(),
  lonDeg: z.number(),
  elevationM: z.number().nullable(),
  zone: z.string().nullable(),
  country: z.string().nullable(),
  countryCode: z.string().nullable(),
  region: z.string().nullable(),
  district: z.string().nullable(),
  population: z.number().nullable(),
});

const degrees = (most: number) =>
  z
    .string()
    .regex(/^-?\d{1,3}(\.\d{1,10})?$/)
    .transform(Number)
    .pipe(z.number().min(-most).max(most));

/** What a site is entered from; asks the feed's hosts, and nobody else. */
export const placeRoutes: readonly ApiRoute[] = [
  {
    method: "GET",
    path: "/places",
    id: "searchPlaces",
    group,
    summary: "Places by name, best first, from the feed's gazetteer",
    query: z.object({ name: z.string().trim().min(2).max(200).describe("The name, or how it begins.") }),
    answer: z.object({ items: z.array(Place) }),
    faults: [503],
    async handle({ context: { feed, words }, query: { name } }) {
      const found = await searchPlaces({ name, feed, language: words.language });
      return found.ok ? { body: { items: found.value } } : notAnswered(found.problems);
    },
  },
  {
    method: "GET",
    path: "/elevation",
    id: "getElevation",
    group,
    summary: "Height of the ground above the sea at a point, from the feed's terrain model",
    query: z.object({ latDeg: degrees(90), lonDeg: degrees(180) }),
    answer: z.object({ elevationM: z.number() }),
    faults: [503],
    async handle({ context: { feed }, query }) {
      const found = await lookUpElevation({ ...query, feed });
      return found.ok ? { body: { elevationM: found.value } } : notAnswered(found.problems);
    },
  },
];

function notAnswered(problems: readonly Problem[]): Refusal {
  const detail = "The feed does not answer just now. Try again in a minute, or give the figures yourself.";
  return { status: 503, code: "feed-not-there", detail, problems };
}
