import type { DoubtData } from "../../pot/learn/observe.ts";
import type { PotNow } from "../../pot/pot-now.ts";

const DAY_MS = 86_400_000;

export interface DoubtOfLate extends DoubtData {
  readonly entryId: string;
}

/** Looks and weighings of the last days that fitted no version of the pot since it was planted, oldest first. */
export function doubtsOfLate(
  { doubts, plantedUtcMs }: Pick<PotNow, "doubts" | "plantedUtcMs">,
  of: { nowUtcMs: number; days: number },
): DoubtOfLate[] {
  const fromUtcMs = Math.max(of.nowUtcMs - of.days * DAY_MS, plantedUtcMs ?? Number.NEGATIVE_INFINITY);
  return doubts.flatMap(({ code, path, data }) => {
    if (code !== "does-not-fit") return [];
    const doubt = { ...(data as unknown as DoubtData), entryId: String(path[1]) };
    return doubt.atUtcMs >= fromUtcMs ? [doubt] : [];
  });
}
