import { setImmediate } from "node:timers/promises";
import type { DailyWeather } from "../../core/replay/hours/daily-weather.ts";
import { type CellResult, playCell, replaySettings } from "../../core/replay/play-cell.ts";
import { type SeedWorld, type Told, worldOfSeed } from "../../core/replay/season/world-of-seed.ts";
import { gardenAt } from "../../core/replay/stage/garden.ts";
import type { Stage } from "../../core/replay/world/known-pot.ts";
import { type KeptCells, NOTHING_KEPT } from "./kept-cells.ts";
import type { ReplayAsk } from "./replay-ask.ts";
import { REPLAY_PLACES } from "./replay-places.ts";

/** Fineness of the bound's cells: halving them moves its value by less than 0.01, which a test holds it to. */
const FINENESS = 0.5;

export interface ReplayProgress {
  /** Seasons, with the part of the one under way that is done. */
  readonly done: number;
  readonly total: number;
  /** Whether the cell was found among those kept. */
  readonly kept: boolean;
}

/** Where a replay is played: the days of one place and the pots that stand there. */
export interface Ground {
  readonly placeId: string;
  readonly daily: DailyWeather;
  readonly stage: Stage;
  /** What is known beyond the days; left out where only days are. */
  readonly told?: Told;
}

/** The garden at every place asked for. */
export function gardenGrounds(ask: ReplayAsk): Ground[] {
  return ask.placeIds.map((placeId) => {
    const daily = REPLAY_PLACES.find(({ id }) => id === placeId)!.days();
    return { placeId, daily, stage: stageOf(ask, daily.site) };
  });
}

/** Plays every cell asked for, place by place, seed by seed, year by year. */
export async function runReplay(
  ask: ReplayAsk,
  of: { grounds?: readonly Ground[]; kept?: KeptCells; onProgress?: (at: ReplayProgress) => void } = {},
): Promise<CellResult[]> {
  const { grounds = gardenGrounds(ask), kept = NOTHING_KEPT, onProgress } = of;
  const total = grounds.length * ask.seedCount * ask.years.length;
  const cells: CellResult[] = [];
  for (const ground of grounds) {
    const { placeId } = ground;
    for (let seed = ask.firstSeed; seed < ask.firstSeed + ask.seedCount; seed++) {
      let world: SeedWorld | null = null;
      for (const year of ask.years) {
        const name = `${placeId}-${seed}-${year}`;
        const found = await kept.read(name);
        world ??= found === null ? worldOfSeed({ ...ground, seed, settings: replaySettings(seed) }) : null;
        const onPart = (at: { done: number; total: number }) => {
          if (at.done < at.total)
            onProgress?.({ done: cells.length + at.done / at.total, total, kept: false });
        };
        const cell = found ?? playCell(world!, { ...cellAsk(ask), placeId, seed, year }, onPart);
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

/** The garden with the groups asked for, in the mix and the vessel asked for. */
function stageOf(ask: ReplayAsk, site: Stage["site"]): Stage {
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
