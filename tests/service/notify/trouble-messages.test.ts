import { describe, expect, it } from "vitest";
import { beat } from "../../../service/jobs/beat.ts";
import { house } from "../jobs/bench-jobs.ts";
import { fixedPost, wayBy } from "./fixed-post.ts";

describe("trouble with the weather", () => {
  it("is told once for an outage of six hours, and again for the next one, to whom it is meant for", async () => {
    const subjects: string[] = [];
    const channel = {
      name: "post",
      deliver: async ({ subject }: { subject: string }) => {
        subjects.push(subject);
        return { ok: true as const };
      },
    };
    const way = wayBy(channel, { kinds: new Set(["trouble"]) });
    const { parts, clock, feed } = await house({ post: { ...fixedPost([]), ways: async () => [way] } });
    const live = async (hours: number) => {
      for (let minute = 0; minute < hours * 60; minute += 20) {
        clock.nowUtcMs += 20 * 60_000;
        await beat(parts);
      }
    };
    await beat(parts);
    feed.isDown = true;
    await live(7);
    expect(subjects).toEqual([]);
    await live(5);
    expect(subjects).toEqual(["No fresh weather for Yard"]);
    await live(12);
    expect(subjects).toHaveLength(1);
    feed.isDown = false;
    await live(6);
    feed.isDown = true;
    await live(14);
    expect(subjects).toHaveLength(2);
  });
});
