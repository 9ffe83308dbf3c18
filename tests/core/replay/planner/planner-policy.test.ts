import { describe, expect, it } from "vitest";
import type { JournalEntry } from "../../../../core/journal/entry.ts";
import { plan } from "../../../../core/plan/make-plan.ts";
import { DEFAULT_SETTINGS } from "../../../../core/plan/settings.ts";
import { KeptPots } from "../../../../core/replay/planner/kept-pots.ts";
import { collectionOf, plannerPolicy } from "../../../../core/replay/planner/planner-policy.ts";
import type { MorningView, Policy } from "../../../../core/replay/policies/policy.ts";
import { playSeason } from "../../../../core/replay/season/play-season.ts";
import { knownPots } from "../../../../core/replay/world/known-pot.ts";
import { springWorld } from "../some-world.ts";

const world = springWorld({ groupIds: ["desert-rose", "hibiscus"], days: 45 });
const season = world.seasonOf(2013);
const settings = { ...DEFAULT_SETTINGS, cloudSize: 21, seed: 3 };
const planner = plannerPolicy({ id: "planner", settings, learns: true, members: true }, world.feed);

describe("the planner as a policy", () => {
  it("plans from kept pots what it plans from the whole journal", () => {
    const { stage } = season;
    const kept = new KeptPots({ stage, known: knownPots(stage), settings, past: world.feed.past });
    const journal: JournalEntry[] = [];
    let compared = 0;
    const policy: Policy = {
      id: "comparing",
      begin(of) {
        const run = planner.begin(of);
        return {
          noted(entries) {
            journal.push(...entries);
            kept.note(entries);
            run.noted?.(entries);
          },
          morning(view: MorningView) {
            const common = {
              collection: collectionOf(of),
              journal,
              weather: world.feed.weatherAt(view.day),
              nowUtcMs: view.nowUtcMs,
              settings,
            };
            const pots = kept.at(view.nowUtcMs);
            // The feed sends thirty days of past, as long as which the whole journal can be replayed.
            if (view.day % 5 === 0 && view.day - season.fromDay < 25) {
              const whole = plan(common);
              expect(plan({ ...common, pots })).toEqual(whole);
              const places = journal.filter(({ body }) => body.kind === "planted" || body.kind === "moved");
              expect(plan({ ...common, pots, journal: places })).toEqual(whole);
              compared++;
            }
            return run.morning(view);
          },
        };
      },
    };
    playSeason(season, policy);
    expect(compared).toBeGreaterThan(3);
  });

  it("plays a season to the same outcome twice, and not to that of another seed", () => {
    expect(playSeason(season, planner)).toEqual(playSeason(season, planner));
  });

  it("is told of deeds only when it is not to learn", () => {
    const heard: JournalEntry[] = [];
    const deaf = plannerPolicy({ id: "deaf", settings, learns: false, members: true }, world.feed);
    const listening: Policy = {
      id: "listening",
      begin(stage) {
        const run = deaf.begin(stage);
        return {
          morning: (view) => run.morning(view),
          noted: (entries) => {
            heard.push(...entries);
            run.noted?.(entries);
          },
        };
      },
    };
    const outcome = playSeason(season, listening);
    expect(heard.some(({ body }) => body.kind === "checked")).toBe(true);
    expect(outcome).not.toEqual(playSeason(season, planner));
  });
});
