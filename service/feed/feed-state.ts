import * as z from "zod";

const Line = z.object({
  failuresInRow: z.number().int().min(0),
  failingSinceUtcMs: z.number().nullable(),
  lastGoodUtcMs: z.number().nullable(),
  /** No call before this instant. */
  notBeforeUtcMs: z.number(),
});

const Kept = z.object({
  /** Address that the body answers; another point or base makes it useless. */
  address: z.string(),
  text: z.string(),
  fetchedUtcMs: z.number(),
  expiresUtcMs: z.number(),
  lastModified: z.string().nullable(),
});

const State = z.object({
  version: z.literal(1),
  forecast: Line,
  ensemble: Line,
  fallback: Line,
  budget: z.object({ utcDay: z.number().int(), spentCalls: z.number().min(0) }),
  /** The fallback's last answer, which its terms ask to keep and to use until it expires. */
  kept: Kept.nullable(),
});

/** How one line to a feed has been doing. */
export type LineState = z.infer<typeof Line>;
export type KeptAnswer = z.infer<typeof Kept>;

/** What manners need to remember of a site's feeds between calls. Plain data: keep it as JSON, give it back next time. */
export type FeedState = z.infer<typeof State>;

const FRESH_LINE: LineState = {
  failuresInRow: 0,
  failingSinceUtcMs: null,
  lastGoodUtcMs: null,
  notBeforeUtcMs: 0,
};

export const INITIAL_FEED_STATE: FeedState = {
  version: 1,
  forecast: FRESH_LINE,
  ensemble: FRESH_LINE,
  fallback: FRESH_LINE,
  budget: { utcDay: 0, spentCalls: 0 },
  kept: null,
};

/** The state kept earlier; the initial one where there is none or it is not ours. */
export function readFeedState(kept: unknown): FeedState {
  const read = State.safeParse(kept);
  return read.success ? read.data : INITIAL_FEED_STATE;
}
