import { calendarDay } from "../../core/site/local-days.ts";
import type { Site } from "../../core/site/site.ts";
import { readFeedState } from "../feed/feed-state.ts";
import { planMessages } from "../notify/plan-messages.ts";
import { troubleMessages } from "../notify/trouble-messages.ts";
import { waysOn } from "../notify/ways-on.ts";
import { type WatchState, watch } from "./day-watch.ts";
import type { Due } from "./due.ts";
import type { JobParts } from "./job-parts.ts";
import { makePlanNow, type Settled } from "./make-plan-now.ts";
import { planTools } from "./plan-tools.ts";
import { pullWeather } from "./pull-weather.ts";

/** Asks the feed for one site, plans anew, and tells the grower when the coming day now asks for something else. */
export async function pullAndWatch(parts: JobParts, due: Due): Promise<void> {
  const { store, feed, tally, log, fetchWeather } = parts;
  const site = await store.sites.get(due.siteId ?? "");
  if (!site) return;
  const nowUtcMs = parts.now();
  const pulled = await pullWeather({ store, site, feed, nowUtcMs, fetchWeather });
  tally.count(pulled.ok ? "pull.done" : "pull.failed", nowUtcMs);
  const problems = (pulled.ok ? pulled.notes : pulled.problems).map(({ code, data }) => ({ code, data }));
  log[pulled.ok ? "info" : "warn"]({
    event: pulled.ok ? "pull-done" : "pull-failed",
    siteId: site.id,
    problems,
  });
  if (pulled.ok) await lookAgain(parts, { site, nowUtcMs });
  else await tellTrouble(parts, { site, nowUtcMs });
}

async function tellTrouble(
  { store, post }: JobParts,
  { site, nowUtcMs }: { site: Site; nowUtcMs: number },
): Promise<void> {
  // A house without pots has no brief that could suffer.
  if (await store.pots.isEmpty(site.id)) return;
  const { failingSinceUtcMs } = readFeedState(await store.feedState.get(site.id)).forecast;
  const ways = await post.ways();
  await store.outbox.add(
    troubleMessages({ site, ways, houseId: store.houseId, nowUtcMs, failingSinceUtcMs }),
  );
}

async function lookAgain(
  parts: JobParts,
  { site, nowUtcMs }: { site: Site; nowUtcMs: number },
): Promise<void> {
  const state = (await parts.store.watchState.get(site.id)) as WatchState | null;
  const isToday = state?.forDay === calendarDay(nowUtcMs, site.zone);
  await makePlanNow({
    ...planTools(parts),
    siteId: site.id,
    nowUtcMs,
    // Before the day's morning there is nothing to amend.
    ...(state && isToday ? { settle: (made) => settleLook(parts, { ...made, state, nowUtcMs }) } : {}),
  });
}

async function settleLook(
  parts: JobParts,
  look: Parameters<NonNullable<Parameters<typeof makePlanNow>[0]["settle"]>>[0] & {
    readonly state: WatchState;
    readonly nowUtcMs: number;
  },
): Promise<Settled> {
  const { plan, nowUtcMs } = look;
  const { state, added, calledOff } = watch(look.state, { plan, nowUtcMs });
  const tells = added.length + calledOff.length > 0;
  if (tells) parts.log.info({ event: "amendment", siteId: plan.siteId, added, calledOff });
  return {
    kind: tells ? "amendment" : "watch",
    messages: tells
      ? planMessages({
          ...parts,
          plan,
          collection: look.input.collection,
          ways: await waysOn(plan.forDay, parts),
          signing: parts.post.signing,
          houseId: parts.store.houseId,
          nowUtcMs,
          amendment: { number: state.amendmentCount },
        })
      : [],
    alongside: (step) => step.watchState.put(plan.siteId, state),
  };
}
