import { describe, expect, it } from "vitest";
import type { Change } from "../../../core/plan/plan.ts";
import { type WatchState, watch, watchFrom } from "../../../service/jobs/day-watch.ts";
import { type BareDeed, barePlan } from "../store/bare-plan.ts";

const MORNING = Date.parse("2031-05-02T04:00Z");
const HOUR_MS = 3_600_000;
const EVENING = "2031-05-02T18:00Z";

function cold(harmAvoided: number, over: Partial<BareDeed> = {}): BareDeed {
  return { potId: "lemon", action: "carry-in", harmAvoided, by: EVENING, ...over };
}

function planAt(nowUtcMs: number, deeds: BareDeed[], changesSince: Change[] = []) {
  return { ...barePlan({ nowUtcMs, deeds }), changesSince };
}

/** Looks every three hours from the morning on; what each of them tells. */
function day(morning: BareDeed[], looks: BareDeed[][]): { said: string[]; state: WatchState } {
  let state = watchFrom(planAt(MORNING, morning));
  const said = looks.map((deeds, index) => {
    const nowUtcMs = MORNING + (index + 1) * 1.5 * HOUR_MS;
    const look = watch(state, { plan: planAt(nowUtcMs, deeds), nowUtcMs });
    state = look.state;
    return [...look.added.map(() => "+"), ...look.calledOff.map(() => "-")].join("");
  });
  return { said, state };
}

describe("the day watch", () => {
  it("tells at once what the morning did not know", () => {
    expect(day([], [[cold(0.2)], [cold(0.2)], [cold(0.3)]]).said).toEqual(["+", "", ""]);
  });

  it("does not repeat what the morning asked for", () => {
    expect(day([cold(0.2)], [[cold(0.2)], [cold(0.5)]]).said).toEqual(["", ""]);
  });

  it("keeps quiet about small wobbles", () => {
    expect(day([], [[cold(0.012)], [cold(0.029)], [cold(0.011)], []]).said).toEqual(["", "", "", ""]);
    expect(day([cold(0.04)], [[cold(0.02)], [cold(0.015)], [cold(0.025)]]).said).toEqual(["", "", ""]);
  });

  it("calls off what the morning asked for, after two looks that no longer ask for it", () => {
    expect(day([cold(0.2)], [[], [], []]).said).toEqual(["", "-", ""]);
    expect(day([cold(0.2)], [[], [cold(0.2)], [], []]).said).toEqual(["", "", "", "-"]);
  });

  it("asks again once for what was called off", () => {
    expect(day([cold(0.2)], [[], [], [cold(0.2)], [cold(0.2)]]).said).toEqual(["", "-", "", "+"]);
  });

  it("never ends on a careless word: what an amendment asked for is not called off", () => {
    expect(day([], [[cold(0.2)], [], [], [], []]).said).toEqual(["+", "", "", "", ""]);
    expect(day([cold(0.2)], [[], [], [cold(0.2)], [cold(0.2)], [], [], []]).said.join("")).toBe("-+");
  });

  it("sends at most two for a forecast that flaps around the line all day", () => {
    for (const start of [[], [cold(0.2)]])
      for (const period of [1, 2, 3, 4]) {
        const looks = Array.from({ length: 24 }, (_, look) =>
          Math.floor(look / period) % 2 === 0 ? [] : [cold(0.2)],
        );
        const { said } = day(start, looks);
        expect(said.filter((one) => one !== "").length, `period ${period}`).toBeLessThanOrEqual(2);
      }
  });

  it("puts all pots of one look in one amendment", () => {
    const bench = ["a", "b", "c"].map((potId) => cold(0.3, { potId }));
    const { said, state } = day([], [bench, bench]);
    expect(said).toEqual(["+++", ""]);
    expect(state.amendmentCount).toBe(1);
  });

  it("looks no further ahead than a day", () => {
    const far = cold(0.5, { by: "2031-05-04T18:00Z" });
    const farFrom = cold(0.5, { from: "2031-05-03T12:00Z", by: "2031-05-03T16:00Z" });
    expect(day([], [[far], [farFrom]]).said).toEqual(["", ""]);
  });

  it("does not tell again what the morning had under the coming days, unless it must be done much sooner", () => {
    const tomorrow = cold(0.3, { by: "2031-05-03T09:00Z" });
    expect(day([tomorrow], [[tomorrow], [tomorrow], [tomorrow]]).said).toEqual(["", "", ""]);
    expect(day([tomorrow], [[tomorrow], [cold(0.3)], [cold(0.3)]]).said).toEqual(["", "+", ""]);
    expect(day([cold(0.3, { by: "2031-05-03T22:00Z" })], [[], [], []]).said).toEqual(["", "", ""]);
  });

  it("does not wait for a second look when there is no time", () => {
    const soon = cold(0.2, { by: "2031-05-02T13:00Z" });
    expect(day([cold(0.2)], [[], [], [soon]]).said).toEqual(["", "-", "+"]);
  });

  it("counts nothing, keeping dry and carrying out as not urgent", () => {
    const quiet: BareDeed[] = [
      { potId: "a", action: "none", harmAvoided: 0.9 },
      { potId: "b", action: "keep-dry", harmAvoided: 0.9 },
      { potId: "c", action: "carry-out", harmAvoided: 0.9 },
    ];
    expect(day([], [quiet]).said).toEqual([""]);
  });

  it("does not call off what has been done, nor what is over", () => {
    const done: Change[] = [{ potId: "lemon", was: "carry-in", is: "none", because: "journal" }];
    let state = watchFrom(planAt(MORNING, [cold(0.2)]));
    for (const hours of [3, 6, 9]) {
      const nowUtcMs = MORNING + hours * HOUR_MS;
      const look = watch(state, { plan: planAt(nowUtcMs, [], done), nowUtcMs });
      expect(look.calledOff).toEqual([]);
      state = look.state;
    }
    state = watchFrom(planAt(MORNING, [cold(0.2)]));
    for (const hours of [15, 18, 20]) {
      const nowUtcMs = MORNING + hours * HOUR_MS;
      const look = watch(state, { plan: planAt(nowUtcMs, []), nowUtcMs });
      expect(look.calledOff).toEqual([]);
      state = look.state;
    }
  });

  it("is plain data that survives the store", () => {
    const { state } = day([cold(0.2)], [[], [cold(0.2, { potId: 'pot "x"' })]]);
    expect(JSON.parse(JSON.stringify(state))).toEqual(state);
  });
});
