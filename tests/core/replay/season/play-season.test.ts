import { describe, expect, it } from "vitest";
import { AWAY_HARM_PER_DAY } from "../../../../core/plan/choice/standing.ts";
import { finger } from "../../../../core/replay/policies/finger.ts";
import { NOTHING, type Policy, type PotView } from "../../../../core/replay/policies/policy.ts";
import { playSeason } from "../../../../core/replay/season/play-season.ts";
import { HARM_TERMS, TERM } from "../../../../core/replay/world/harm-terms.ts";
import { springWorld } from "../some-world.ts";

/** From 23 April on; pots are repotted on 20 May. */
const season = springWorld({ groupIds: ["desert-rose", "pelargonium"], days: 60 }).seasonOf(2013);

/** Does what is told to every pot every morning, and keeps what it saw. */
function every(deed: (pot: PotView, day: number) => typeof NOTHING, seen: PotView[][] = []): Policy {
  return {
    id: "every",
    begin: () => ({
      morning: (view) => {
        seen.push([...view.pots]);
        return view.pots.map((pot) => deed(pot, view.day));
      },
    }),
  };
}

describe("a season", () => {
  it("repots on its day whoever looks after the pots", () => {
    const seen: PotView[][] = [];
    playSeason(
      season,
      every(() => NOTHING, seen),
    );
    const since = seen.map(([pot]) => pot!.sincePlantedDays);
    expect(since.filter((days) => days === 0)).toHaveLength(1);
    expect(since.at(-1)).toBe(since.length - 1 - since.indexOf(0));
  });

  it("holds a soaking of fresh cuts against whoever does it", () => {
    const soak = every((pot) => ({
      ...NOTHING,
      pourMl: pot.sincePlantedDays === 1 ? Number.POSITIVE_INFINITY : 0,
    }));
    const [desertRose] = playSeason(season, soak).pots;
    expect(desertRose!.harmByTerm[TERM["wet-wound"]]).toBeGreaterThan(0.15);
    expect(desertRose!.pours).toBe(1);
  });

  it("counts cans, carries, litres and mornings with work", () => {
    const toAndFro = every((_, day) => ({ pourMl: 100, toSpot: day % 2 === 0 ? 1 : 0 }));
    const mornings = season.toDay - season.fromDay;
    const { pots, morningsWithWork } = playSeason(season, toAndFro);
    expect(morningsWithWork).toBe(mornings);
    for (const pot of pots.filter(({ lost }) => !lost)) {
      expect(pot.pours).toBe(mornings);
      expect(pot.litres).toBeCloseTo(mornings / 10, 6);
      expect(pot.carries).toBeGreaterThan(mornings - 2);
      expect(pot.trips).toBeGreaterThan(0);
    }
  });

  it("counts a lost plant as one, and goes on with another that wears like any", () => {
    const long = springWorld({ groupIds: ["hibiscus"], days: 85 }).seasonOf(2013);
    const lastDays = 20;
    const unwatered = (lastSpot: number) =>
      playSeason(
        long,
        every((pot, day) => {
          const wanted = day >= long.toDay - lastDays ? lastSpot : 0;
          return { ...NOTHING, toSpot: pot.spot === wanted ? null : wanted };
        }),
      ).pots[0]!;
    const [stayed, dry] = [unwatered(0), unwatered(1)];
    expect(stayed.lost).toBe(true);
    expect(dry.harm).toBeCloseTo(1 + dry.harmByTerm[TERM.gloom]!, 9);
    // A nuisance to the grower, nothing to the plant.
    expect(dry.trouble).toBeGreaterThanOrEqual(dry.harmByTerm[TERM.away]!);
    const more = dry.harmByTerm[TERM.away]! - stayed.harmByTerm[TERM.away]!;
    expect(more).toBeGreaterThan((lastDays - 2) * AWAY_HARM_PER_DAY);
  });

  it("lets a cover keep rain from a pot until it is carried or taken off", () => {
    const shield = { letsInFrac: 0, coldLeftFrac: 1, hours: 24, trips: 0.5 };
    const wet = (policy: Policy) => playSeason(season, policy).pots[1]!;
    const outside = (pot: PotView) => ({ ...NOTHING, toSpot: pot.spot === 0 ? null : 0 });
    const covered = wet(every((pot) => ({ ...outside(pot), shield })));
    const open = wet(every(outside));
    expect(covered.harmByTerm[TERM.thirst]).toBeGreaterThan(open.harmByTerm[TERM.thirst]!);
    // Put up once and left standing.
    expect(covered.shields).toBe(1);
  });

  it("tells one figure a harm term", () => {
    expect(playSeason(season, finger).pots[0]!.harmByTerm).toHaveLength(HARM_TERMS.length);
  });
});
