import { describe, expect, it } from "vitest";
import type { Log } from "../../../service/log.ts";
import type { Channel, Delivery } from "../../../service/notify/channel.ts";
import { deliverDue } from "../../../service/notify/deliver-due.ts";
import { fill } from "../store/bench.ts";
import { emptyStore } from "../store/test-store.ts";
import { wayBy } from "./fixed-post.ts";

const START = Date.parse("2031-05-02T04:00Z");
const MINUTE_MS = 60_000;

async function house(answers: (Delivery | Error)[]) {
  const store = await emptyStore();
  await fill(store);
  const clock = { nowUtcMs: START };
  const taken: { id: string; atUtcMs: number }[] = [];
  const channel: Channel = {
    name: "post",
    async deliver({ id }) {
      const answer = answers.shift() ?? { ok: true };
      if (answer instanceof Error) throw answer;
      if (answer.ok) taken.push({ id, atUtcMs: clock.nowUtcMs });
      return answer;
    },
  };
  const logged: Record<string, unknown>[] = [];
  const note = (fields: Record<string, unknown>) => void logged.push(fields);
  const log = { debug: note, info: note, warn: note, error: note } as unknown as Log;
  const deliver = (atUtcMs: number, channels: readonly Channel[] = [channel]) => {
    clock.nowUtcMs = atUtcMs;
    return deliverDue({ store, ways: channels.map((one) => wayBy(one)), now: () => clock.nowUtcMs, log });
  };
  return { store, deliver, taken, logged };
}

function message(id: string, channel = "post") {
  const words = { subject: "s", body: "b" };
  const times = { createdUtcMs: START, keepTryingUntilUtcMs: START + 23 * 60 * MINUTE_MS };
  return { id, siteId: "yard", planId: null, channel, ...words, ...times };
}

const LOST: Delivery = { ok: false, fault: "post-lost" };

describe("delivering", () => {
  it("brings each message once", async () => {
    const { store, deliver, taken } = await house([]);
    await store.outbox.add([message("a"), message("b")]);
    expect(await deliver(START)).toBe(2);
    expect(await deliver(START + MINUTE_MS)).toBe(0);
    await store.outbox.add([message("a")]);
    expect(await deliver(START + 2 * MINUTE_MS)).toBe(0);
    expect(taken.map(({ id }) => id)).toEqual(["a", "b"]);
  });

  it("tries again after 1, 2, 4 ... 60 minutes, whether a channel says no or breaks", async () => {
    const { store, deliver, taken } = await house([
      LOST,
      new Error("broke"),
      LOST,
      LOST,
      LOST,
      LOST,
      LOST,
      LOST,
    ]);
    await store.outbox.add([message("a")]);
    const tries: number[] = [];
    for (let minute = 0; taken.length === 0 && minute < 600; minute++) {
      const before = (await store.outbox.list("yard"))[0]!.tries;
      await deliver(START + minute * MINUTE_MS);
      const after = (await store.outbox.list("yard"))[0]!;
      if (after.tries > before || after.state === "sent") tries.push(minute);
    }
    const gaps = tries.slice(1).map((minute, index) => minute - tries[index]!);
    expect(gaps).toEqual([1, 2, 4, 8, 16, 32, 60, 60]);
    expect(taken).toHaveLength(1);
  });

  it("one message that does not go leaves the others alone", async () => {
    const { store, deliver, taken } = await house([LOST]);
    await store.outbox.add([message("a"), message("b")]);
    expect(await deliver(START)).toBe(1);
    expect(taken.map(({ id }) => id)).toEqual(["b"]);
  });

  it("gives a brief up when the next one is about to come, and says so", async () => {
    const { store, deliver, taken, logged } = await house(Array.from({ length: 99 }, () => LOST));
    await store.outbox.add([message("a")]);
    for (let hour = 0; hour < 30; hour++) await deliver(START + hour * 60 * MINUTE_MS);
    expect(taken).toEqual([]);
    expect(await store.outbox.counts()).toEqual({ waiting: 0, sent: 0, "given-up": 1 });
    expect(logged.at(-1)).toMatchObject({ event: "message-given-up", fault: "post-lost" });
  });

  it("keeps a message for a channel that is not set up, in case it comes back", async () => {
    const { store, deliver, taken } = await house([]);
    await store.outbox.add([message("a")]);
    await deliver(START, []);
    expect(await store.outbox.list("yard")).toMatchObject([
      { state: "waiting", lastFault: "channel-not-set-up" },
    ]);
    await deliver(START + 5 * MINUTE_MS);
    expect(taken).toHaveLength(1);
  });
});
