import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { BRACE, SHADE } from "../../../core/plan/aid/aids.ts";
import { type PlanInput, plan, planFrom } from "../../../core/plan/make-plan.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import { type Weighed, weigh } from "../../../core/plan/weigh.ts";
import type { GroupId } from "../../../core/plant/group.ts";
import { GROUPS } from "../../../core/plant/groups.ts";
import type { Spot } from "../../../core/site/spot.ts";
import { caseOf, deedsOf, type Scenario } from "../../scenarios/scenario.ts";
import { type PotStory, SPOTS } from "../../scenarios/scenario-pots.ts";
import type { Sky, SkyDay } from "../../scenarios/scenario-weather.ts";

/** Properties of whole plans on made-up gardens and skies. A plan takes some time, so there are few runs, always the same. */
const RUNS = { numRuns: 40, seed: 2031, endOnFailure: true };

const skyDay: fc.Arbitrary<SkyDay> = fc.record({
  minC: fc.integer({ min: -3, max: 20 }),
  maxC: fc.integer({ min: 21, max: 36 }),
  cloudFrac: fc.double({ min: 0, max: 1, noNaN: true }),
  windMPerS: fc.double({ min: 0.5, max: 9, noNaN: true }),
  rain: fc.record({
    mm: fc.integer({ min: 0, max: 40 }),
    from: fc.integer({ min: 0, max: 20 }),
    hours: fc.constantFrom(1, 3, 4),
    chance: fc.double({ min: 0.1, max: 1, noNaN: true }),
  }),
});
const sky: fc.Arbitrary<Sky> = fc.record({
  past: skyDay.map(({ rain: _, ...dry }) => dry),
  ahead: fc.array(skyDay, { minLength: 1, maxLength: 8 }),
});
const story: fc.Arbitrary<Omit<PotStory, "id">> = fc.record({
  group: fc.constantFrom<GroupId[]>(...GROUPS.map(({ id }) => id)),
  rimCm: fc.integer({ min: 12, max: 34 }),
  tallCm: fc.integer({ min: 10, max: 90 }),
  mix: fc.constantFrom("gritty", "peaty", "potting"),
  at: fc.constantFrom("bench", "wall", "eave"),
  plantedDaysAgo: fc.constantFrom(1, 3, 27),
  roots: fc.constantFrom("undisturbed", "pruned"),
  wateredDaysAgo: fc.constantFrom([], [1], [4], [9], [20]),
});
const stories = (most: number) =>
  fc
    .array(story, { minLength: 1, maxLength: most })
    .map((pots): PotStory[] => pots.map((pot, i) => ({ ...pot, id: `pot-${i}` })));
const season = fc.constantFrom("spring", "summer", "autumn", "winter");
const garden = (most: number) => fc.record({ season, sky, pots: stories(most) });

const killC = new Map(GROUPS.map(({ id, values }) => [id, values.killC]));

type Garden = Pick<Scenario, "season" | "sky" | "pots" | "spots" | "settings">;
const inputOf = (made: Garden): PlanInput => caseOf({ ...made, situation: "", why: "", expected: {} });
const moved = (made: Plan) =>
  made.pots
    .filter(({ potId }) => deedsOf(made, potId).some(({ toSpotId }) => toSpotId !== undefined))
    .map(({ potId }) => potId);
const watered = (made: Plan) =>
  made.pots
    .filter(({ potId }) =>
      deedsOf(made, potId).some((deed) => deed.action === "water" || deed.action === "soak-slowly"),
    )
    .map(({ potId }) => potId);

/** The sky with every day ahead changed. */
const changed = ({ past, ahead }: Sky, change: (day: SkyDay) => SkyDay): Sky => ({
  past,
  ahead: ahead.map(change),
});

/** Harm and trouble of all pots as they were settled, those that no carry was thought of for left out. */
const costOf = ({ studies, places }: Weighed) =>
  studies.reduce(
    (sum, { now }) => sum + (places.get(now.pot.id)!.chosen?.cost ?? 0) * (now.pot.count ?? 1),
    0,
  );
/** Trouble of carries, the way back that is owed included, and of a stake or cloth told instead of one, in trips. */
const tripsOf = (input: PlanInput) => {
  const weighed = weigh(input);
  const carried = weighed.studies.reduce(
    (sum, { now }) => sum + (weighed.places.get(now.pot.id)!.chosen?.trips ?? 0),
    0,
  );
  const aids = planFrom(weighed, input).pots.flatMap((row) => [row, ...row.then]);
  const trouble = new Map<string, number>([BRACE, SHADE].map(({ action, trips }) => [action, trips()]));
  return aids.reduce((sum, { action }) => sum + (trouble.get(action) ?? 0), carried);
};
const withRoom = (places: number): readonly Spot[] =>
  SPOTS.filter(({ id }) => id !== "sill").map((spot) =>
    spot.id === "shed" ? { ...spot, room: { places } } : spot,
  );

describe("a plan", () => {
  it("is the same, byte for byte, from the same input and seed, and in whatever order things are listed", () => {
    fc.assert(
      fc.property(garden(4), (made) => {
        const input = inputOf(made);
        const { collection, journal } = input;
        const turned = {
          ...input,
          journal: [...journal].reverse(),
          collection: {
            ...collection,
            pots: [...collection.pots].reverse(),
            spots: [...collection.spots].reverse(),
            mixes: [...collection.mixes].reverse(),
          },
        };
        const text = JSON.stringify(plan(input));
        expect(JSON.stringify(plan(input))).toBe(text);
        expect(JSON.stringify(plan(turned))).toBe(text);
      }),
      RUNS,
    );
  });

  /** Of pots that stay: one that more rain sends under cover gets none of it, and may want the can for that. */
  it("asks for no can under more rain that it does not ask for under less", () => {
    fc.assert(
      fc.property(garden(4), fc.double({ min: 1.2, max: 4, noNaN: true }), (made, times) => {
        const wetter = changed(made.sky, (day) => ({
          ...day,
          rain: { ...day.rain!, mm: day.rain!.mm * times },
        }));
        const before = plan(inputOf(made));
        const after = plan(inputOf({ ...made, sky: wetter }));
        const movers = new Set([...moved(before), ...moved(after)]);
        expect(watered(before)).toEqual(
          expect.arrayContaining(watered(after).filter((potId) => !movers.has(potId))),
        );
      }),
      RUNS,
    );
  });

  /**
   * Of pots that the shed keeps alive: where it kills too, there is no better place to be in. In 5,000 other gardens with
   * 12,300 pots it failed for two, each wet by rain at home in nights that were mild before and after: in them a cooler
   * night lets roots in wet mix rot more slowly, and dries by drier air.
   */
  it("brings no pot out today ahead of colder nights that it would not bring out ahead of milder ones", () => {
    const inside = stories(4).map((pots) =>
      pots.map(
        (pot): PotStory => ({
          ...pot,
          plantedDaysAgo: 27,
          also: [{ daysAgo: 6, body: { kind: "moved", toSpotId: "shed" } }],
        }),
      ),
    );
    const outToday = (made: Plan) =>
      made.pots
        .filter(({ potId }) =>
          deedsOf(made, potId).some(
            ({ action, from }) => action === "carry-out" && from!.slice(0, 10) === made.forDay,
          ),
        )
        .map(({ potId }) => potId);
    fc.assert(
      fc.property(season, sky, inside, fc.integer({ min: 1, max: 8 }), (when, mild, pots, byC) => {
        const colder = changed(mild, (day) => ({ ...day, minC: day.minC - byC }));
        const before = outToday(plan(inputOf({ season: when, sky: mild, pots })));
        const made = plan(inputOf({ season: when, sky: colder, pots }));
        const { coldestByDayC } = made.spots.find(({ spotId }) => spotId === "shed")!;
        const shedC = Math.min(...coldestByDayC.map(({ low }) => low));
        const after = outToday(made).filter(
          (potId) => killC.get(pots.find(({ id }) => id === potId)!.group)! < shedC,
        );
        expect(before).toEqual(expect.arrayContaining(after));
      }),
      RUNS,
    );
  });

  it("costs no more with one place more under cover", () => {
    fc.assert(
      fc.property(garden(6), fc.integer({ min: 0, max: 4 }), (made, places) => {
        const few = costOf(weigh(inputOf({ ...made, spots: withRoom(places) })));
        const more = costOf(weigh(inputOf({ ...made, spots: withRoom(places + 1) })));
        expect(more).toBeLessThanOrEqual(few * (1 + 1e-9) + 1e-12);
      }),
      RUNS,
    );
  });

  it("says the same of all others when a pot that asks for no place is gone", () => {
    fc.assert(
      fc.property(garden(4), (made) => {
        const whole = inputOf({ ...made, spots: withRoom(1) });
        const idle = weigh(whole).studies.find(({ options }) => options.length === 0)?.now.pot.id;
        fc.pre(idle !== undefined);
        const { collection, journal } = whole;
        const without = {
          ...whole,
          journal: journal.filter(({ potId }) => potId !== idle),
          collection: { ...collection, pots: collection.pots.filter(({ id }) => id !== idle) },
        };
        expect(plan(without).pots).toEqual(plan(whole).pots.filter(({ potId }) => potId !== idle));
      }),
      RUNS,
    );
  });

  it("takes no less trouble when a trip costs half", () => {
    fc.assert(
      fc.property(garden(4), fc.integer({ min: 1, max: 40 }), (made, tripWorth) => {
        const dear = tripsOf(inputOf({ ...made, settings: { tripWorth } }));
        const cheap = tripsOf(inputOf({ ...made, settings: { tripWorth: tripWorth / 2 } }));
        expect(cheap).toBeGreaterThanOrEqual(dear - 1e-9);
      }),
      RUNS,
    );
  });
});
