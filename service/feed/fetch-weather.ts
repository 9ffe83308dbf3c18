import type { Problem } from "../../core/problem.ts";
import { callerWithContact } from "./caller.ts";
import { chooseFeed, type FeedChoice } from "./choose-feed.ts";
import { feedProblem } from "./feed-problem.ts";
import type { FeedSettings } from "./feed-settings.ts";
import { INITIAL_FEED_STATE } from "./feed-state.ts";
import type { WeatherAnswer, WeatherAsk } from "./weather-ask.ts";
import { weatherFromFallback } from "./weather-from-fallback.ts";
import { weatherFromPrimary } from "./weather-from-primary.ts";

/**
 * The weather of a site, past days and days ahead, forecast and ensemble on one hour axis. Without a usable ensemble
 * the members are null and the notes say why. Asks the primary feed, and the fallback once the primary has failed
 * for a while; asks nobody while a feed rests after a failure, or within the hour after a good answer (problem
 * "feed-not-due", "feed-resting" or "feed-budget-spent", with `untilUtcMs`).
 */
export async function fetchWeather(ask: WeatherAsk): Promise<WeatherAnswer> {
  let state = ask.state ?? INITIAL_FEED_STATE;
  const { nowUtcMs, feed } = ask;
  const choice = chooseFeed({ state, nowUtcMs, fallbackReady: isFallbackReady(feed) });
  const problems: Problem[] = [];
  for (const name of choice.ask) {
    const pull = name === "forecast" ? weatherFromPrimary : weatherFromFallback;
    const answer = await pull({ ...ask, state });
    if (answer.ok) return { ...answer, notes: [...problems, ...answer.notes] };
    state = answer.state;
    problems.push(...answer.problems);
  }
  return { ok: false, problems: problems.length > 0 ? problems : [whyNobody(choice)], notes: [], state };
}

/** The fallback is set up once it has an address and we have a contact to give it. */
function isFallbackReady(feed: FeedSettings): boolean {
  return feed.fallbackUrl !== "" && callerWithContact(feed) !== null;
}

function whyNobody(choice: FeedChoice): Problem {
  const resting = "because" in choice && choice.because === "resting";
  const until = "untilUtcMs" in choice ? { untilUtcMs: choice.untilUtcMs } : {};
  return feedProblem(resting ? "feed-resting" : "feed-not-due", { feed: "forecast", ...until });
}
