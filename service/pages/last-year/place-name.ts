import type { PageContext } from "../page-context.ts";

/** What a place of replays is called on a page. */
export function placeName(words: PageContext["words"], placeId: string): string {
  return words.trySay(`last-year.place.${placeId}`) ?? placeId;
}
