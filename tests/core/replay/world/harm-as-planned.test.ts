import { describe, expect, it } from "vitest";
import { type Course, emptyTally } from "../../../../core/plan/harm/course.ts";
import { thirst } from "../../../../core/plan/harm/thirst.ts";
import { wetCold } from "../../../../core/plan/harm/wet-cold.ts";
import { wetRoots } from "../../../../core/plan/harm/wet-roots.ts";
import { wetWound } from "../../../../core/plan/harm/wet-wound.ts";
import { firstState } from "../../../../core/replay/season/first-state.ts";
import type { Season } from "../../../../core/replay/season/season.ts";
import { emptyHarm } from "../../../../core/replay/season/season-result.ts";
import { TERM } from "../../../../core/replay/world/harm-terms.ts";
import { repot } from "../../../../core/replay/world/plant-out.ts";
import { runWorldHours } from "../../../../core/replay/world/run-hours.ts";
import type { WorldPot } from "../../../../core/replay/world/world-pot.ts";
import type { WorldState } from "../../../../core/replay/world/world-state.ts";
import type { SpotForcing } from "../../../../core/site/forcing.ts";
import { springWorld } from "../some-world.ts";

const HOURS = 24 * 30;

/** A season whose spots all have one steady weather. */
function steadySeason(groupId: string, weather: { et0Mm: number; rainMm: number; tempC: number }): Season {
  const season = springWorld({ groupIds: [groupId], days: 45 }).seasonOf(2013);
  const column = (value: number) => new Float64Array(season.axis.hourCount).fill(value);
  const spots = season.clock.spots.map(
    (spot): SpotForcing => ({
      ...spot,
      et0Mm: column(weather.et0Mm),
      rainMm: column(weather.rainMm),
      tempC: column(weather.tempC),
      plantTempC: column(weather.tempC),
      lightMjPerM2: column(0.8),
      gustMPerS: column(0),
    }),
  );
  return { ...season, clock: { ...season.clock, spots } };
}

/** Runs the world hour by hour and keeps what the planner's terms read. */
function run(season: Season, pot: WorldPot, state: WorldState, hours = HOURS) {
  const world = { clock: season.clock, pot };
  const fromHour = season.clock.roundHour[season.fromDay]!;
  const harm = emptyHarm();
  const into = { harm, pouredMl: 0, drainedMl: 0 };
  const waterMl = new Float64Array(HOURS);
  const wetBase = new Uint8Array(HOURS);
  const closes: number[] = [];
  for (let h = 0; h < hours; h++) {
    const wetBefore = state.wetHours;
    const hour = fromHour + h;
    runWorldHours(world, state, { fromHour: hour, toHour: hour + 1, deeds: [], into });
    waterMl[h] = state.upperMl + state.lowerMl;
    wetBase[h] = state.wetHours > wetBefore ? 1 : 0;
    if (season.clock.closes[hour] === 1) closes.push(h);
  }
  return { harm, waterMl, wetBase, closes };
}

/** The same course as the planner's terms take it: one particle with the true capacity. */
function courseOf(of: {
  pot: WorldPot;
  restingShareFrac: number;
  waterMl: Float64Array;
  wetBase: Uint8Array;
  season: Season;
}): Course {
  const { pot, season } = of;
  const column = () => new Float64Array(HOURS);
  return {
    now: {
      values: pot.known.values,
      inVessel: pot.known.inVessel,
      rest: { restingShareFrac: of.restingShareFrac, why: "warm-growth" },
      cloud: {
        size: 1,
        weightFrac: Float64Array.of(1),
        capacityFactor: Float64Array.of(pot.hidden.capacityFactor),
      },
    } as unknown as Course["now"],
    stretches: [{ fromHour: 0, forcing: { ...season.clock.spots[0]!, hourCount: HOURS } }],
    trajectory: {
      hourCount: HOURS,
      size: 1,
      waterMl: of.waterMl,
      wetBase: of.wetBase,
      drainedMl: column(),
      wettedMl: column(),
    },
    startUtcMs: 0,
    days: [],
    dayOfHour: new Int16Array(HOURS),
  };
}

describe("harm in the world is the planner's own, on what truly is", () => {
  it("thirst, for a pot that dries out in growth", () => {
    const season = steadySeason("hibiscus", { et0Mm: 0.2, rainMm: 0, tempC: 22 });
    const [pot] = season.pots as [WorldPot];
    const { harm, waterMl, wetBase } = run(season, pot, warmed(season, pot));
    const tally = emptyTally(1, 1);
    thirst(courseOf({ pot, restingShareFrac: 0, waterMl, wetBase, season }), tally);
    expect(tally.byDay[0]).toBeGreaterThan(0.5);
    expect(harm[TERM.thirst]).toBeCloseTo(tally.byDay[0]!, 9);
  });

  it.each(["cactus-desert", "pelargonium"])(
    "thirst, for a %s at rest, which stands more of it",
    (groupId) => {
      const season = steadySeason(groupId, { et0Mm: 0.2, rainMm: 0, tempC: 2 });
      const [pot] = season.pots as [WorldPot];
      const state = firstState(season, pot);
      state.upperMl = pot.upperUnusableMl;
      state.lowerMl = pot.lowerUnusableMl;
      const { restingFrac: restingShareFrac } = state;
      expect(restingShareFrac).toBeGreaterThan(0.5);
      const { harm, waterMl, wetBase } = run(season, pot, state);
      expect(state.restingFrac).toBeCloseTo(restingShareFrac, 9);
      const tally = emptyTally(1, 1);
      thirst(courseOf({ pot, restingShareFrac, waterMl, wetBase, season }), tally);
      expect(tally.byDay[0]).toBeGreaterThan(0);
      expect(harm[TERM.thirst]).toBeCloseTo(tally.byDay[0]!, 9);
    },
  );

  it("wet roots, for a pot that is rained on day after day", () => {
    const season = steadySeason("citrus", { et0Mm: 0.01, rainMm: 0.6, tempC: 22 });
    const [pot] = season.pots as [WorldPot];
    const { harm, waterMl, wetBase } = run(season, pot, warmed(season, pot));
    const tally = emptyTally(1, 1);
    wetRoots(courseOf({ pot, restingShareFrac: 0, waterMl, wetBase, season }), tally);
    expect(tally.byDay[0]).toBeGreaterThan(0.2);
    expect(harm[TERM["wet-roots"]]).toBeCloseTo(tally.byDay[0]!, 9);
  });

  /** Within a plan's horizon: beyond its bend the planner weighs cold nights more than the world counts them. */
  it("wet roots in the cold, for a pot that stands wet in cold nights", () => {
    const season = steadySeason("desert-rose", { et0Mm: 0.01, rainMm: 0.3, tempC: 11 });
    const [pot] = season.pots as [WorldPot];
    const state = warmed(season, pot);
    state.lastNightC = 11;
    state.nightBeforeC = 11;
    const { harm, waterMl, wetBase, closes } = run(season, pot, state, 10 * 24);
    const course = courseOf({ pot, restingShareFrac: 0, waterMl, wetBase, season });
    const days = closes.map((h) => ({ toHour: h + 1 }));
    const spots = closes.map(() => ({ threeNightC: new Float64Array(closes.length).fill(11) }));
    const tally = emptyTally(closes.length, 1);
    wetCold({ ...course, days } as unknown as Course, spots as never, tally);
    const planned = tally.byDay.reduce((a, b) => a + b, 0);
    expect(planned).toBeGreaterThan(0.3);
    expect(harm[TERM["wet-cold"]]).toBeCloseTo(planned, 9);
  });

  it("no rot in nights a shade too cool, for however long they last", () => {
    const season = steadySeason("desert-rose", { et0Mm: 0, rainMm: 0.3, tempC: 15.1 });
    const [pot] = season.pots as [WorldPot];
    const state = warmed(season, pot);
    const { harm } = run(season, pot, state);
    expect(state.threeNightC).toBeLessThan(pot.known.values.cutWaterNightC);
    expect(harm[TERM["wet-cold"]]).toBe(0);
  });

  it("a wetting of fresh cuts", () => {
    const season = steadySeason("desert-rose", { et0Mm: 0, rainMm: 2, tempC: 20 });
    const [pot] = season.pots as [WorldPot];
    const world = { clock: season.clock, pot };
    const fromHour = season.clock.roundHour[season.fromDay]!;
    const state = warmed(season, pot);
    repot(world, state, { hour: fromHour, roots: "pruned" });
    const harm = emptyHarm();
    const into = { harm, pouredMl: 0, drainedMl: 0 };
    runWorldHours(world, state, { fromHour, toHour: fromHour + 1, deeds: [], into });
    const course = courseOf({
      pot,
      restingShareFrac: 0,
      waterMl: new Float64Array(HOURS),
      wetBase: new Uint8Array(HOURS),
      season,
    });
    course.trajectory.wettedMl[0] = (2 * pot.catchMlPerMm) / pot.hidden.capacityFactor;
    const aftercare = { stage: "dry", healedFrac: 0, dryUntilUtcMs: 7 * 24 * 3_600_000 };
    const tally = emptyTally(1, 1);
    wetWound({ ...course, now: { ...course.now, aftercare } } as unknown as Course, tally);
    expect(tally.byDay[0]).toBeGreaterThan(0.05);
    expect(harm[TERM["wet-wound"]]).toBeCloseTo(tally.byDay[0]!, 9);
  });
});

/** In full growth outdoors: three warm nights behind it. */
function warmed(season: Season, pot: WorldPot): WorldState {
  return {
    ...firstState(season, pot),
    spot: 0,
    lastNightC: 22,
    nightBeforeC: 22,
    threeNightC: 22,
    meanC: 22,
    restingFrac: 0,
    refillFrac: pot.known.values.refillFrac,
  };
}
