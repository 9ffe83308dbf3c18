import { calendarDay } from "../../core/site/local-days.ts";
import type { Site } from "../../core/site/site.ts";
import type { NewMessage } from "../store/outbox-store.ts";
import { bareMessage } from "./bare-message.ts";
import type { Way } from "./way.ts";

const HOUR_MS = 3_600_000;
/** So long without weather is more than a hiccup of the feed, and the brief begins to lose by it. Chosen by us. */
const TELL_AFTER_MS = 6 * HOUR_MS;
const KEEP_TRYING_HOURS = 23;

/** That the weather has not come for some hours, once for each outage, for each way that wants it. */
export function troubleMessages(input: {
  readonly site: Site;
  readonly ways: readonly Way[];
  readonly houseId: string;
  readonly nowUtcMs: number;
  /** Null while the feed answers. */
  readonly failingSinceUtcMs: number | null;
}): NewMessage[] {
  const { site, ways, houseId, nowUtcMs, failingSinceUtcMs } = input;
  if (failingSinceUtcMs === null || nowUtcMs - failingSinceUtcMs < TELL_AFTER_MS) return [];
  const forDay = calendarDay(failingSinceUtcMs, site.zone);
  return ways
    .filter(({ kinds }) => kinds.has("trouble"))
    .map((way) => {
      const { words } = way;
      const today = calendarDay(nowUtcMs, site.zone);
      const since = words.when(failingSinceUtcMs, { zone: site.zone, today });
      const keepTryingUntilUtcMs = nowUtcMs + KEEP_TRYING_HOURS * HOUR_MS;
      const idKind = `trouble-${failingSinceUtcMs}`;
      const about = { houseId, siteId: site.id, forDay, nowUtcMs, keepTryingUntilUtcMs, idKind };
      const subject = words.say("trouble.subject", { site: site.name });
      return bareMessage(way, about, {
        kind: "trouble",
        subject,
        text: words.say("trouble.text", { since }),
      });
    });
}
