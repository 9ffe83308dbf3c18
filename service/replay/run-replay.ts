import { setImmediate } from "node:timers/promises";
import { type CellResult, playCell, replaySettings } from "../../core/replay/play-cell.ts";
import { type SeedWorld, worldOfSeed } from "../../core/replay/season/world-of-seed.ts";
import { gardenAt } from "../../core/replay/stage/garden.ts";
import type { Stage } from "../../core/replay/world/known-pot.ts";
import { type KeptCells, NOTHING_KEPT } from "./kept-cells.ts";
import type { ReplayAsk } from "./replay-ask.ts";
import { REPLAY_PLACES, type ReplayPlace } from "./replay-places.ts";

/** Fineness of the bound's cells: halving them moves its value by less than 0.01, which a test holds it to. */
const FINENESS = 0.5;

export interface ReplayProgress {
  readonly done: number;
  readonly total: number;
  /** Whether the cell was found among those kept. */
  readonly kept: boolean;
}

/** Plays every cell asked for, place by place, seed by seed, year by year. */
export async function runReplay(
  ask: ReplayAsk,
  { kept = NOTHING_KEPT, onProgress }: { kept?: KeptCells; onProgress?: (at: ReplayProgress) => void } = {},
): Promise<CellResult[]> {
  const total = ask.placeIds.length * ask.seedCount * ask.years.length;
  const cells: CellResult[] = [];
  for (const placeId of ask.placeIds) {
    const place = REPLAY_PLACES.find(({ id }) => id === placeId)!;
    for (let seed = ask.firstSeed; seed < ask.firstSeed + ask.seedCount; seed++) {
      let world: SeedWorld | null = null;
      for (const year of ask.years) {
        const name = `${placeId}-${seed}-${year}`;
        const found = await kept.read(name);
        world ??= found === null ? worldOf(ask, place, seed) : null;
        const cell = found ?? playCell(world!, { ...cellAsk(ask), placeId, seed, year });
        if (found === null) await kept.write(name, cell);
        cells.push(cell);
        onProgress?.({ done: cells.length, total, kept: found !== null });
        // Whoever wants to stop the run is heard between two cells.
        await setImmediate();
      }
    }
  }
  return cells;
}

function worldOf(ask: ReplayAsk, place: ReplayPlace, seed: number): SeedWorld {
  const daily = place.days();
  return worldOfSeed({ daily, stage: stageOf(ask, daily.site), seed, settings: replaySettings(seed) });
}

/** The garden with the groups asked for, in the mix and the vessel asked for. */
export function stageOf(ask: ReplayAsk, site: Stage["site"]): Stage {
  const stage = gardenAt(site, ask.groupIds);
  const pots = stage.pots.map((one) => ({
    ...one,
    ...(ask.mixId === null ? {} : { mixId: ask.mixId }),
    ...(ask.vessel === null ? {} : { vessel: ask.vessel }),
  }));
  return { ...stage, pots };
}

function cellAsk(ask: ReplayAsk) {
  return { policyIds: ask.policyIds, fineness: ask.bound ? FINENESS : null };
}
