import type { FeedSettings } from "../feed/feed-settings.ts";
import type { Post } from "../notify/post.ts";
import type { ReplayDesk } from "../replay/replay-desk.ts";
import type { Store } from "../store/open-store.ts";
import type { HouseWords } from "../words/house-words.ts";

/** What every page needs from the world. */
export interface PageContext {
  readonly store: Store;
  readonly feed: FeedSettings;
  readonly now: () => number;
  /** The house holds an invented collection; every page says so. */
  readonly demo: boolean;
  readonly words: HouseWords;
  /** Local clock at which the morning brief is made, hours from midnight. */
  readonly briefAtHour: number;
  /** The ways by which messages go out. */
  readonly post: Post;
  /** Where checked copies of the store lie, and how many; no folder where none are made. */
  readonly copies: { readonly dir: string | null; readonly keepCount: number };
  /** Where replays of a year are asked for; null where nobody plays them. */
  readonly replays: ReplayDesk | null;
  /** Makes and stores a new plan from what is known now. */
  replan(siteId: string): Promise<unknown>;
}
