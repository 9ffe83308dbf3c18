import { playCell } from "../../core/replay/play-cell.ts";
import { POLICIES } from "../../core/replay/policy-list.ts";
import { worldOfSeed } from "../../core/replay/season/world-of-seed.ts";
import { gardenAt } from "../../core/replay/stage/garden.ts";
import type { Stage } from "../../core/replay/world/known-pot.ts";
import { BUILT_IN_PLACES, daysOfPlace } from "../../service/replay/built-in-places.ts";

const POTS = 60;

/** A year of sixty pots under the planner, and how long the other parts of a replay take for eight. */
export async function bench(): Promise<{ name: string; lines: string[] }> {
  const place = BUILT_IN_PLACES[1]!;
  const daily = daysOfPlace(place);
  const many = crowded(gardenAt(place.site));
  const lines = [`${POTS} pots, planner, one year: ${seconds(() => play(many, ["planner"], null))} s`];
  const few = gardenAt(place.site);
  const people = POLICIES.filter(({ kind }) => kind === "people").map(({ id }) => id);
  lines.push(
    `8 pots, world of four years made, six ways of people, one year: ${seconds(() => play(few, people, null))} s`,
  );
  lines.push(`8 pots, best that could have been done, one year: ${seconds(() => play(few, [], 0.5))} s`);
  return { name: "replay", lines };

  function play(stage: Stage, policyIds: readonly string[], fineness: number | null): void {
    const world = worldOfSeed({ daily, stage, seed: 1, settings: { tripWorth: 4 } });
    playCell(world, { placeId: place.id, seed: 1, year: 2014, policyIds, fineness });
  }
}

/** The garden's pots again and again under other names. */
function crowded(stage: Stage): Stage {
  const pots = Array.from({ length: POTS }, (_, i) => {
    const one = stage.pots[i % stage.pots.length]!;
    return { ...one, pot: { ...one.pot, id: `${one.pot.id}-${i}`, name: `${one.pot.name} ${i}` } };
  });
  return { ...stage, pots };
}

function seconds(run: () => void): string {
  const began = performance.now();
  run();
  return ((performance.now() - began) / 1000).toFixed(1);
}
