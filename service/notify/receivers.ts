import type { StoreQueries } from "../store/store-queries.ts";
import type { Words } from "../words/words.ts";
import { HOUSE_PERSON } from "./post.ts";

export interface Receiver {
  readonly id: string;
  readonly name: string;
}

/** Whoever can get a message: the house itself, and its people. */
export async function receivers({
  store,
  words,
}: {
  readonly store: Pick<StoreQueries, "people">;
  readonly words: Words;
}): Promise<readonly Receiver[]> {
  return [{ id: HOUSE_PERSON, name: words.say("house.mornings-house") }, ...(await store.people.list())];
}
