import { describe, expect, it } from "vitest";
import { firstState } from "../../../../core/replay/season/first-state.ts";
import { careOfHour } from "../../../../core/replay/world/care-hour.ts";
import { repot } from "../../../../core/replay/world/plant-out.ts";
import type { WorldPot } from "../../../../core/replay/world/world-pot.ts";
import { springWorld } from "../some-world.ts";

const season = springWorld({ groupIds: ["desert-rose"], days: 30 }).seasonOf(2013);
const [pot] = season.pots as [WorldPot];

/** A pot whose cut has closed by a share, soaked once. */
function soakedAt(closedShare: number) {
  const hour = season.clock.roundHour[season.fromDay]!;
  const state = firstState(season, pot);
  repot({ clock: season.clock, pot }, state, { hour, roots: "pruned" });
  state.healedDays = closedShare * state.needDays;
  const pourMl = pot.capacityMl;
  const harm = careOfHour(pot, state, { leafC: 20, rainMm: 0, pourMl, wettedMl: pourMl });
  return { harm, closedShare: state.healedDays / state.needDays };
}

describe("a soaking of cut roots", () => {
  it("begins the wait of a fresh cut anew, and hardly that of one that has all but closed", () => {
    expect(soakedAt(0).closedShare).toBeCloseTo(0, 2);
    expect(soakedAt(0.5).closedShare).toBeCloseTo(0.25, 1);
    expect(soakedAt(0.95).closedShare).toBeGreaterThan(0.88);
  });

  it("does the less harm the further the cut has closed", () => {
    const harms = [0, 0.3, 0.6, 0.9].map((share) => soakedAt(share).harm);
    expect(harms).toEqual([...harms].sort((a, b) => b - a));
    expect(harms[0]).toBeCloseTo(0.3, 2);
    expect(harms[3]).toBeLessThan(0.04);
  });
});
