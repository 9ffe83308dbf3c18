import { describe, expect, it } from "vitest";
import { beat } from "../../../service/jobs/beat.ts";
import { type HouseStatus, houseStatus } from "../../../service/jobs/house-status.ts";
import { houseTroubles } from "../../../service/jobs/house-troubles.ts";
import type { Message } from "../../../service/store/outbox-store.ts";
import { site } from "../store/bench.ts";
import { house } from "./bench-jobs.ts";

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;
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
      weather: {
        origin: null,
        failuresInRow: 0,
        failingSinceUtcMs: null,
        spreadFailingSinceUtcMs: null,
        nextPullUtcMs: 0,
        faults: [],
      },
      morning: {
        hasPots: true,
        lastDay: null,
        lastMadeUtcMs: null,
        dueUtcMs: MORNING,
        wasLate: false,
        missedDays: [],
        isOverdue: false,
        nextUtcMs: MORNING,
        faults: [],
      },
      messages: [],
      backup: { lastUtcMs: null, faults: [] },
    });
  });

  it("after a good morning", async () => {
    const { parts, status } = await bench();
    await beat(parts);
    const { weather, morning, messages } = await status();
    expect(weather).toMatchObject({ origin: { source: "primary", fetchedUtcMs: MORNING }, faults: [] });
    expect(weather.nextPullUtcMs).toBeGreaterThan(MORNING + 3 * HOUR_MS - 1);
    expect(morning).toEqual({
      hasPots: true,
      lastDay: "2031-05-02",
      lastMadeUtcMs: MORNING,
      dueUtcMs: MORNING,
      wasLate: false,
      missedDays: [],
      isOverdue: false,
      nextUtcMs: MORNING + 24 * HOUR_MS,
      faults: [],
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
      faults: [{ code: "feed-refused", feed: null, next: "check-network" }],
    });
    expect(morning).toMatchObject({
      lastDay: null,
      isOverdue: true,
      nextUtcMs: clock.nowUtcMs,
      faults: [{ code: "no-weather-yet", feed: null, next: null }],
    });
  });

  it("on the morning after days without the service: late, and which days had none", async () => {
    const { parts, status, clock } = await bench();
    await beat(parts);
    clock.nowUtcMs = MORNING + 3 * DAY_MS + 2 * HOUR_MS;
    expect(houseTroubles(await status(), clock.nowUtcMs)).toContain("morning");
    await beat(parts);
    expect((await status()).morning).toMatchObject({
      lastDay: "2031-05-05",
      dueUtcMs: MORNING + 3 * DAY_MS,
      wasLate: true,
      missedDays: ["2031-05-03", "2031-05-04"],
      isOverdue: false,
    });
    expect(houseTroubles(await status(), clock.nowUtcMs)).toEqual([]);
  });
});

describe("what is worth a look", () => {
  const calm: HouseStatus = {
    weather: {
      origin: null,
      failuresInRow: 0,
      failingSinceUtcMs: null,
      spreadFailingSinceUtcMs: null,
      nextPullUtcMs: 0,
      faults: [],
    },
    morning: {
      hasPots: true,
      lastDay: null,
      lastMadeUtcMs: null,
      dueUtcMs: MORNING,
      wasLate: false,
      missedDays: [],
      isOverdue: false,
      nextUtcMs: MORNING,
      faults: [],
    },
    messages: [],
    backup: { lastUtcMs: null, faults: [] },
  };
  const message = { tries: 0, state: "waiting", channel: "a" } as Message;

  it.each<[string, Partial<HouseStatus>, string[]]>([
    ["a new house", {}, []],
    ["a feed that fails", { weather: { ...calm.weather, failuresInRow: 1 } }, ["weather"]],
    ["a morning that is overdue", { morning: { ...calm.morning, isOverdue: true } }, ["morning"]],
    ["a message on its way", { messages: [message] }, []],
    ["a message tried in vain", { messages: [{ ...message, tries: 1 }] }, ["messages"]],
    ["a message given up", { messages: [{ ...message, state: "given-up" }] }, ["messages"]],
    [
      "a message given up, after which one got through",
      {
        messages: [
          { ...message, state: "sent" },
          { ...message, state: "given-up" },
        ],
      },
      [],
    ],
    [
      "a message given up on one way of two",
      {
        messages: [
          { ...message, state: "sent" },
          { ...message, channel: "b", state: "given-up" },
        ],
      },
      ["messages"],
    ],
    ["a message sent at the third try", { messages: [{ ...message, state: "sent", tries: 2 }] }, []],
    ["a copy of last night", { backup: { lastUtcMs: MORNING - DAY_MS, faults: [] } }, []],
    ["a copy of three nights ago", { backup: { lastUtcMs: MORNING - 3 * DAY_MS, faults: [] } }, ["backup"]],
    [
      "a night on a full disk",
      { backup: { lastUtcMs: MORNING, faults: [{ code: "store-full", feed: null, next: null }] } },
      ["backup"],
    ],
  ])("%s", (_, over, parts) => {
    expect(houseTroubles({ ...calm, ...over }, MORNING)).toEqual(parts);
  });
});
