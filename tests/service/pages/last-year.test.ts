import { describe, expect, it } from "vitest";
import { DEFAULT_FEED_SETTINGS } from "../../../service/feed/feed-settings.ts";
import { createApp } from "../../../service/pages/app.tsx";
import { readReplayAsk } from "../../../service/replay/replay-ask.ts";
import type { DeskAsk, DeskState, ReplayDesk } from "../../../service/replay/replay-desk.ts";
import { replayReport } from "../../../service/replay/replay-report.ts";
import { runReplay } from "../../../service/replay/run-replay.ts";
import { collection } from "../brief/plan-builder.ts";
import { asServed } from "./as-served.ts";
import { postOf } from "./post-of.ts";
import { stockedStore } from "./stocked-store.ts";

/** A desk in a given state that notes what it is asked for. */
function deskIn(state: DeskState) {
  const asked: DeskAsk[] = [];
  const shown = { state };
  const desk: ReplayDesk = {
    state: async () => shown.state,
    start: (ask) => void asked.push(ask),
    close: () => undefined,
  };
  return { desk, asked, shown };
}

async function pageIn(state: DeskState, demo = false) {
  const { desk, asked, shown } = deskIn(state);
  const app = asServed(
    createApp({
      store: await stockedStore({ collection }),
      feed: DEFAULT_FEED_SETTINGS,
      now: () => Date.parse("2027-05-12T05:00Z"),
      demo,
      replays: desk,
      replan: async () => undefined,
    }),
  );
  const answer = await app.request("/house/last-year");
  return { app, asked, shown, answer, text: (await answer.text()).replaceAll("\u00a0", " ") };
}

const OWN: DeskAsk = { placeId: "own-site", year: 2026 };

describe("how last year would have gone", () => {
  it("asks for the grower's own place first, and plays it", async () => {
    const { app, asked, text } = await pageIn({ kind: "none" });
    expect(text).toContain("your own place in 2026");
    const sent = await app.request("/house/last-year", postOf({ place: "own-site" }));
    expect(sent.status).toBe(303);
    await app.request("/house/last-year", postOf({ place: "invented-monsoon" }));
    expect(asked).toEqual([OWN, { placeId: "invented-monsoon", year: 2014 }]);
  });

  it("plays nothing unasked: without a place it says what to do", async () => {
    const { app, asked } = await pageIn({ kind: "none" });
    const sent = await app.request("/house/last-year", postOf({ place: "" }));
    expect(sent.status).toBe(422);
    expect(await sent.text()).toContain("Choose one from the list.");
    expect(asked).toEqual([]);
  });

  it("says of invented weather that it is, and asks no archive for an invented house", async () => {
    const { text } = await pageIn({ kind: "none" }, true);
    expect(text).toContain("an invented monsoon coast");
    expect(text).not.toContain("your own place in");
  });

  it("shows how far it is and looks again by itself", async () => {
    const { answer, text } = await pageIn({ kind: "running", ask: OWN, doneFrac: 0.25 });
    expect(text).toMatch(/<progress[^>]*value="0.25"/);
    expect(answer.headers.get("refresh")).toBe("5");
  });

  it("is made anew at every look, for what it shows is not in the store", async () => {
    const { app, shown } = await pageIn({ kind: "running", ask: OWN, doneFrac: 0.25 });
    shown.state = { kind: "running", ask: OWN, doneFrac: 0.5 };
    const again = await app.request("/house/last-year");
    expect(await again.text()).toMatch(/<progress[^>]*value="0.5"/);
    expect(again.headers.get("refresh")).toBe("5");
  });

  it("says what to do when it failed", async () => {
    const { text } = await pageIn({ kind: "failed", ask: OWN, codes: ["pot-not-planted"] });
    expect(text).toContain("Note its planting, then try again.");
  });

  it("tells the outcome of each way in words", async () => {
    const read = readReplayAsk({
      place: "invented-dry-summer",
      group: "pelargonium",
      policy: "fixed-days,dry-to-the-finger",
      years: "2013",
      bound: true,
    });
    if (!read.ok) throw new Error(JSON.stringify(read.problems));
    const report = replayReport(read.value, await runReplay(read.value));
    const ask = { placeId: "invented-dry-summer", year: 2013 };
    const { text } = await pageIn({ kind: "done", ask, report });
    expect(text).toContain("Water on fixed days");
    expect(text).toContain("The best that could have been done");
    expect(text).toContain("nobody measured them");
    expect(text).not.toMatch(/NaN|undefined|Infinity/);
  });
});
