import { describe, expect, it } from "vitest";
import { feedProblem } from "../../../service/feed/feed-problem.ts";
import { faultCodeOf, faultNote, faultsInNote } from "../../../service/jobs/fault-note.ts";
import { StoreFault } from "../../../service/store/store-fault.ts";

describe("what went amiss, as a run keeps it", () => {
  it("comes back with its feed and what helps, each once", () => {
    const problems = [
      feedProblem("feed-timeout", { feed: "forecast" }),
      feedProblem("feed-denied", { feed: "fallback", next: "check-contact" }),
      feedProblem("feed-column-missing", { feed: "ensemble", column: "a" }),
      feedProblem("feed-column-missing", { feed: "ensemble", column: "b" }),
      { code: "no-weather-yet", path: [] },
    ];
    expect(faultsInNote(faultNote(problems))).toEqual([
      { code: "feed-timeout", feed: "forecast", next: "wait" },
      { code: "feed-denied", feed: "fallback", next: "check-contact" },
      { code: "feed-column-missing", feed: "ensemble", next: "wait" },
      { code: "no-weather-yet", feed: null, next: null },
    ]);
  });

  it("is read from notes of an older version, and nothing from an empty one", () => {
    expect(faultsInNote("feed-refused primary")).toEqual([
      { code: "feed-refused", feed: null, next: "check-network" },
      { code: "primary", feed: null, next: null },
    ]);
    expect(faultsInNote("")).toEqual([]);
  });

  it("names the store's own fault, and any other by the job", () => {
    expect(faultCodeOf(new StoreFault("store-full"), "night-failed")).toBe("store-full");
    expect(faultCodeOf(new RangeError("x"), "plan-failed")).toBe("plan-failed");
    expect(faultCodeOf("odd", "plan-failed")).toBe("plan-failed");
  });
});
