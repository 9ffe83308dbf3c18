import fc from "fast-check";
import { expect, it } from "vitest";
import { watch, watchFrom } from "../../../service/jobs/day-watch.ts";
import { barePlan } from "../store/bare-plan.ts";

const MORNING = Date.parse("2031-05-02T04:00Z");

const harms = fc.array(fc.constantFrom(0, 0.005, 0.02, 0.03, 0.2, 0.9), { minLength: 1, maxLength: 30 });

function planWith(harm: number, nowUtcMs: number) {
  const deed = { potId: "p", action: "carry-in", by: "2031-05-02T23:00Z", harmAvoided: harm } as const;
  return barePlan({ nowUtcMs, deeds: harm === 0 ? [] : [deed] });
}

it("whatever the forecasts do, one deed stands in two amendments at most, and danger that stays is known", () => {
  fc.assert(
    fc.property(harms, ([first, ...rest]) => {
      let state = watchFrom(planWith(first!, MORNING));
      let isKnown = first! > 0;
      let told = 0;
      rest.forEach((harm, index) => {
        const nowUtcMs = MORNING + (index + 1) * 1_800_000;
        const look = watch(state, { plan: planWith(harm, nowUtcMs), nowUtcMs });
        state = look.state;
        told += look.added.length + look.calledOff.length;
        if (look.added.length > 0) isKnown = true;
        if (look.calledOff.length > 0) isKnown = false;
      });
      expect(told).toBeLessThanOrEqual(2);
      const lastTwo = [first!, ...rest].slice(-2);
      if (lastTwo.length === 2 && lastTwo.every((harm) => harm >= 0.03)) expect(isKnown).toBe(true);
    }),
  );
});
