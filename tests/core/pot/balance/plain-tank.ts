import { lossRows } from "../../../../core/pot/balance/lose.ts";
import { type Account, openAccount, type Tank } from "../../../../core/pot/balance/tank.ts";

/**
 * A tank of one particle given in depths: 1 mL stands for 1 mm on the ground, so published depths run through the
 * balance as they are. Processes not named are switched off.
 */
export type PlainTank = Tank & { readonly account: Account };

export function plainTank(of: {
  usableMm: number;
  depletionFrac?: number;
  demandPerMm?: number;
  depletionMm?: number;
  surfaceMm?: number;
  sorptivityMmPerSqrtDay?: number;
  evaporationPerMm?: number;
  cover?: { coverBase: number; coverPerMl: number };
}): PlainTank {
  const { usableMm, depletionFrac = 0.5, demandPerMm = 0, depletionMm = 0, surfaceMm = 1e-6 } = of;
  const one = (value: number) => Float64Array.of(value);
  const sorption = (of.sorptivityMmPerSqrtDay ?? 0) ** 2 / 24;
  const columns = {
    size: 1,
    capacityMl: one(usableMm + surfaceMm),
    wetAboveMl: one(Number.POSITIVE_INFINITY),
    surfaceMostMl: one(surfaceMm),
    surfaceUsableMl: one(surfaceMm),
    surfaceMlPerMm: one(of.evaporationPerMm ?? 0),
    sorptionMl2PerH: one(sorption),
    bodyMostMl: one(usableMm),
    bodyUsableMl: one(usableMm),
    wallPerMm: one(0),
    thirstMlPerMm: one(demandPerMm),
    depletionFrac: one(depletionFrac),
    surfaceRootsFrac: 0,
    catchMlPerMm: one(1),
    saucerMostMl: 0,
    shedsBelowMl: one(0),
    shedsMissingMl: one(0),
    coverBase: of.cover?.coverBase ?? 1,
    coverPerMl: of.cover?.coverPerMl ?? 0,
    surfaceMl: one(0),
    bodyMl: one(depletionMm),
    saucerMl: one(0),
  };
  return { ...columns, rows: lossRows(columns), account: openAccount(1) };
}
