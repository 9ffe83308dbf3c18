import { describe, expect, it } from "vitest";
import { coldAhead } from "../../../../core/plan/rows/cold-ahead.ts";

/** Growers stop water below 10 °C (50 °F) nights and cut it below 15.6 °C (60 °F) for desert rose: common practice. */
const rose = { values: { stopWaterNightC: 10, cutWaterNightC: 15.6 } } as Parameters<typeof coldAhead>[0];

const spot = (...days: number[][]) =>
  ({
    days: days.map(() => ({})),
    size: days[0]!.length,
    threeNightC: Float64Array.from(days.flat()),
  }) as unknown as Parameters<typeof coldAhead>[1];
const even = (from: number, to: number) =>
  Array.from({ length: 21 }, (_, i) => from + ((to - from) * i) / 20);

describe("the cold ahead", () => {
  it("is the middle of the coldest three nights where that lies below a line, and says which line", () => {
    expect(coldAhead(rose, spot(even(15, 19), even(12, 16)))).toEqual({
      d: 1,
      figures: { nightC: 14, limit: "cut", limitC: 15.6, sure: "yes" },
    });
    expect(coldAhead(rose, spot(even(6, 10))).figures).toMatchObject({ limit: "stop", limitC: 10 });
  });

  it("is the cold end where only that lies below, said to be unsure, and never above the line that it names", () => {
    const { figures } = coldAhead(rose, spot(even(13, 21)));
    expect(figures.sure).toBe("no");
    expect(figures.nightC).toBeLessThan(figures.limitC);
    const one = coldAhead(rose, spot([15, ...even(17, 21)])).figures;
    expect(one).toMatchObject({ nightC: 15, sure: "no" });
  });

  it("looks from the day asked on", () => {
    expect(coldAhead(rose, spot(even(2, 4), even(12, 14)), 1).d).toBe(1);
  });
});
