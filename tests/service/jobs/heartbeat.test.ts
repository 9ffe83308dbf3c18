import { describe, expect, it, onTestFinished, vi } from "vitest";
import { startHeartbeat } from "../../../service/jobs/heartbeat.ts";
import { house } from "./bench-jobs.ts";

/** A promise that the test keeps when it likes. */
function later(): { promise: Promise<void>; resolve(): void } {
  const kept: (() => void)[] = [];
  const promise = new Promise<void>((resolve) => kept.push(resolve));
  return { promise, resolve: () => kept[0]?.() };
}

describe("the heartbeat", () => {
  it("does not begin a beat while one is under way", async () => {
    const { parts, delivered } = await house();
    const heartbeat = startHeartbeat(parts, { beating: false });
    await Promise.all([heartbeat.beatNow(), heartbeat.beatNow(), heartbeat.beatNow()]);
    expect(parts.tally.counts.get("beat")).toBe(1);
    expect(delivered).toHaveLength(1);
    await heartbeat.beatNow();
    expect(parts.tally.counts.get("beat")).toBe(2);
  });

  it("comes every minute until it is stopped", async () => {
    vi.useFakeTimers({
      now: Date.parse("2031-05-02T03:29:50Z"),
      toFake: ["setTimeout", "clearTimeout", "Date"],
    });
    onTestFinished(() => void vi.useRealTimers());
    const { parts } = await house();
    const heartbeat = startHeartbeat(parts, { beating: true });
    const beats = async (ms: number) => {
      await vi.advanceTimersByTimeAsync(ms);
      await heartbeat.beatNow();
      return parts.tally.counts.get("beat") ?? 0;
    };
    const first = await beats(11_000);
    expect(first).toBeGreaterThanOrEqual(1);
    expect(await beats(180_000)).toBeGreaterThanOrEqual(first + 3);
    await heartbeat.stop();
    const stopped = parts.tally.counts.get("beat") ?? 0;
    await vi.advanceTimersByTimeAsync(300_000);
    expect(parts.tally.counts.get("beat")).toBe(stopped);
  });

  it("waits for the beat under way when it is stopped", async () => {
    const { parts } = await house();
    const answering = later();
    const asked = later();
    const fetchWeather: typeof parts.fetchWeather = async (ask) => {
      asked.resolve();
      await answering.promise;
      return parts.fetchWeather(ask);
    };
    const heartbeat = startHeartbeat({ ...parts, fetchWeather }, { beating: false });
    void heartbeat.beatNow();
    await asked.promise;
    let isStopped = false;
    const stopping = heartbeat.stop().then(() => {
      isStopped = true;
    });
    await new Promise((resolve) => setImmediate(resolve));
    expect(isStopped).toBe(false);
    answering.resolve();
    await stopping;
    expect(parts.tally.counts.get("beat")).toBe(1);
  });

  it("goes on after a beat that broke as a whole", async () => {
    const { parts, store, logged } = await house();
    const heartbeat = startHeartbeat(parts, { beating: false });
    const list = vi.spyOn(store.sites, "list").mockRejectedValueOnce(new Error("gone for a moment"));
    await heartbeat.beatNow();
    expect(logged).toContainEqual(expect.objectContaining({ event: "beat-broke" }));
    list.mockRestore();
    await heartbeat.beatNow();
    expect(parts.tally.counts.get("beat")).toBe(1);
  });
});
