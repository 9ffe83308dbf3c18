import { describe, expect, it } from "vitest";
import { beat } from "../../../service/jobs/beat.ts";
import type { JobParts } from "../../../service/jobs/job-parts.ts";
import { createApp } from "../../../service/pages/app.tsx";
import { StoreFault } from "../../../service/store/store-fault.ts";
import { house } from "../jobs/bench-jobs.ts";
import { fixedPost } from "../notify/fixed-post.ts";
import { barePlan } from "../store/bare-plan.ts";
import { pot } from "../store/bench.ts";
import { emptyStore } from "../store/test-store.ts";

const HOUR_MS = 3_600_000;
const DAY_MS = 24 * HOUR_MS;

/** The real jobs and the real pages on one store. */
async function bench(over: Partial<JobParts> = {}) {
  const made = await house(over);
  const app = createApp({ ...made.parts, replan: async () => undefined });
  const page = async (address: string) => (await app.request(address)).text();
  const text = async (address: string) =>
    (await page(address))
      .replace(/<[^>]+>/g, "\n")
      .replaceAll("\u00a0", " ")
      .replaceAll("&#39;", "'");
  return { ...made, page, status: () => text("/house/status"), today: () => text("/") };
}

describe("the page on how the house is doing", () => {
  it("leads a house without a place to its beginning", async () => {
    const { parts } = await house();
    const app = createApp({ ...parts, store: await emptyStore(), replan: async () => undefined });
    const answer = await app.request("/house/status");
    expect([answer.status, answer.headers.get("location")]).toEqual([303, "/begin"]);
  });

  it("on a good day says so, and what comes next", async () => {
    const { parts, status } = await bench();
    await beat(parts);
    const text = await status();
    expect(text).toContain("Weather, briefs, messages and copies are in order.");
    expect(text).toContain("Last fetched at 05:30, within the hour.");
    expect(text).toContain("It comes from the first weather service.");
    expect(text).toMatch(/It is asked again at 08:\d\d\./);
    expect(text).toContain("The last one is for Friday 2 May, made at 05:30.");
    expect(text).toContain("The next is made at Sat 3 May, 05:30.");
    expect(text).toContain("Delivered at 05:30.");
    expect(text).not.toContain("Worth a look");
  });

  it("with the feed down tells since when, how often, why, what helps and when it is tried again", async () => {
    const { parts, clock, feed, status } = await bench();
    await beat(parts);
    feed.isDown = true;
    clock.nowUtcMs += 4 * HOUR_MS;
    await beat(parts);
    clock.nowUtcMs += 5 * 60_000;
    await beat(parts);
    const text = await status();
    expect(text).toContain("Worth a look: the weather.");
    expect(text).toContain(
      "has not answered properly since 09:30, 2 times in a row. Until it does, briefs rest on the last good weather.",
    );
    expect(text).toContain("It took no connection. The weather service cannot be reached.");
    expect(text).toMatch(/It is asked again at 09:\d\d\./);
    expect(text).toContain("4 hours ago");
  });

  it("in a new house whose feed cannot be reached, every page without a brief asks for one and leads to the cause", async () => {
    const { parts, feed, status, page } = await bench();
    feed.isDown = true;
    await beat(parts);
    for (const address of ["/", "/sky", "/holiday"]) {
      const text = await page(address);
      expect(text, address).toContain("you can also ask for it now");
      expect(text, address).toContain('<form method="post" action="/replan">');
      expect(text, address).toContain('<a href="/house/status">See why');
    }
    const text = await status();
    expect(text).toMatch(/The first weather service (did|has) not answer/);
    expect(text).toContain("Until it does, no brief can be made.");
    expect(text).not.toContain("last good weather");
  });

  it("names the feed that failed, and what helps with that one", async () => {
    const { store, status } = await bench();
    const detail = "feed-timeout@forecast feed-denied@fallback=check-contact";
    const at = { startedUtcMs: 1, endedUtcMs: 1 };
    await store.runs.add({
      siteId: "yard",
      job: "pull",
      slot: "",
      ...at,
      outcome: "failed",
      late: false,
      detail,
    });
    const text = await status();
    expect(text).toContain("First weather service: no answer came in time.\n");
    expect(text).toContain(
      "Second weather service: it did not let this house in. The second weather service wants",
    );
  });

  it("tells of a message that waits, and of one that was given up, what to do", async () => {
    const faults = ["mail-eauth-535", "mail-econnection"];
    const channels = [
      {
        name: "mail-1",
        to: "bench@host.example",
        deliver: async () => ({ ok: false, fault: faults[0]! }) as const,
      },
      { name: "log", deliver: async () => ({ ok: false, fault: faults[1]! }) as const },
    ];
    const { parts, clock, status, today } = await bench({ post: fixedPost(channels) });
    await beat(parts);
    const waiting = await status();
    expect(waiting).toContain("Mail to bench@host.example");
    expect(waiting).toContain("Printed by the service");
    expect(waiting).toContain(
      "Waiting: one try so far. The next is at 05:31, the last before Sat 3 May, 04:30.",
    );
    expect(waiting).toContain("does not take the name and password in LEEBENCH_SMTP_URL");
    expect(await today()).toContain("Worth a look: the messages.");
    for (let hours = 0; hours < 26; hours++) {
      clock.nowUtcMs += HOUR_MS;
      await beat(parts);
    }
    const text = await status();
    expect(text).toContain("Given up at 04:30. The brief itself stands on the page of today.");
    expect(text).toContain("The mail server cannot be reached.");
  });

  it("says of a way that is no longer set that it is gone", async () => {
    const { parts, clock, store, status } = await bench();
    await beat(parts);
    const [message] = await store.outbox.list("yard");
    await store.outbox.add([
      { ...message!, id: "other", channel: "mail-old", createdUtcMs: clock.nowUtcMs + 1 },
    ]);
    expect(await status()).toContain("A way that is no longer set (mail-old)");
  });

  it("tells of a night without a copy, and of days without a brief", async () => {
    const { parts, clock, store, status, today } = await bench();
    await beat(parts);
    clock.nowUtcMs += 2 * DAY_MS + 4 * HOUR_MS;
    const letGoOfOld = async () => {
      throw new StoreFault("store-full");
    };
    await beat({ ...parts, store: { ...store, letGoOfOld } });
    const text = await status();
    expect(text).toContain("Worth a look: the nightly copy.");
    expect(text).toContain("The disk is full. Free some space.");
    expect(text).toContain("It is tried again within the hour.");
    expect(text).toContain("It came late: its hour was 05:30.");
    expect(text).toContain("Before it there was none on Saturday 3 May.");
    const brief = await today();
    expect(brief).toContain("This brief came late: it was made at 09:30 and not at 05:30.");
    expect(brief).toContain("There was no brief on Saturday 3 May.");
  });

  it("tells of a planner that breaks", async () => {
    const { parts, planner, status, clock } = await bench();
    planner.make = () => {
      throw new RangeError("waterMl is NaN");
    };
    await beat(parts);
    const text = await status();
    expect(text).toContain("Today's brief is due and still to be made.");
    expect(text).toContain("The reckoning broke off.");
    planner.make = ({ nowUtcMs }) => barePlan({ nowUtcMs });
    clock.nowUtcMs += 15 * 60_000;
    await beat(parts);
    expect(await status()).toContain("in order");
  });

  it("in a house without pots waits for the first one, and sends no empty brief", async () => {
    const { parts, store, status, delivered, clock } = await bench();
    await store.db.deleteFrom("pot").execute();
    await beat(parts);
    expect(delivered).toEqual([]);
    expect(await status()).toContain("The next is made as soon as a pot is entered.");
    await store.pots.put("yard", pot());
    clock.nowUtcMs += 2 * HOUR_MS;
    await beat(parts);
    expect(delivered).toHaveLength(1);
    expect(delivered[0]?.body).not.toContain("came late");
  });
});
