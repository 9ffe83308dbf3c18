import type { CalendarDay } from "../../core/site/site.ts";
import { type Handover, handoversOn } from "../store/handover.ts";
import type { StoreQueries } from "../store/store-queries.ts";
import type { Post } from "./post.ts";
import type { Way } from "./way.ts";

/** The ways of a day: whoever looks after the pots then gets the brief too, or alone; with who skips empty mornings. */
export async function waysOn(
  day: CalendarDay,
  { post, store }: { post: Pick<Post, "ways">; store: Pick<StoreQueries, "choices"> },
): Promise<readonly Way[]> {
  const skipping = new Set(await store.choices.skipEmpty());
  const ways = withHandovers(await post.ways(), handoversOn(await store.choices.handovers(), day));
  return ways.map((way) => (skipping.has(way.personId) ? { ...way, skipsEmpty: true } : way));
}

/** An absence that nobody can take over, since there is no way to that person, silences nobody. */
function withHandovers(ways: readonly Way[], handovers: readonly Handover[]): readonly Way[] {
  const reached = handovers.filter(({ personId }) => ways.some((way) => way.personId === personId));
  if (reached.length === 0) return ways;
  const isAlone = reached.some(({ alone }) => alone);
  return ways.flatMap((way) => {
    const cover = reached.find(({ personId }) => personId === way.personId);
    if (cover) return { ...way, cover, kinds: new Set([...way.kinds, "morning", "amendment"] as const) };
    if (!isAlone) return way;
    return { ...way, kinds: new Set([...way.kinds].filter((kind) => kind === "trouble")) };
  });
}
