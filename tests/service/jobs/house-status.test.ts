import { describe, expect, it } from "vitest";
import { beat } from "../../../service/jobs/beat.ts";
import { houseStatus } from "../../../service/jobs/house-status.ts";
import { site } from "../store/bench.ts";
import { house } from "./bench-jobs.ts";

const HOUR_MS = 3_600_000;
const MORNING = Date.parse("2031-05-02T03:30Z");

async function bench() {
  const made = await house();
  const status = () =>
    houseStatus({ store: made.store, site: site(), nowUtcMs: made.clock.nowUtcMs, briefAtHour: 5.5 });
  return { ...made, status };
}

describe("how the house is doing", () => {
  it("before anything has happened", async () => {
    const { status, clock } = await bench();
    clock.nowUtcMs -= HOUR_MS;
    expect(await status()).toEqual({
      weather: { origin: null, failuresInRow: 0, failingSinceUtcMs: null, nextPullUtcMs: 0, fault: null },
      morning: { lastDay: null, lastMadeUtcMs: null, wasLate: false, nextUtcMs: MORNING, fault: null },
      messages: [],
      backup: { lastUtcMs: null, fault: null },
    });
  });

  it("after a good morning", async () => {
    const { parts, status } = await bench();
    await beat(parts);
    const { weather, morning, messages } = await status();
    expect(weather).toMatchObject({ origin: { source: "primary", fetchedUtcMs: MORNING }, fault: null });
    expect(weather.nextPullUtcMs).toBeGreaterThan(MORNING + 3 * HOUR_MS - 1);
    expect(morning).toEqual({
      lastDay: "2031-05-02",
      lastMadeUtcMs: MORNING,
      wasLate: false,
      nextUtcMs: MORNING + 24 * HOUR_MS,
      fault: null,
    });
    expect(messages).toMatchObject([{ state: "sent", channel: "post" }]);
  });

  it("with the feed down since the first day", async () => {
    const { parts, status, feed, clock } = await bench();
    feed.isDown = true;
    await beat(parts);
    const { weather, morning } = await status();
    expect(weather).toMatchObject({
      origin: null,
      failuresInRow: 1,
      failingSinceUtcMs: MORNING,
      fault: "feed-refused",
    });
    expect(morning).toMatchObject({ lastDay: null, nextUtcMs: clock.nowUtcMs, fault: "no-weather-yet" });
  });
});
