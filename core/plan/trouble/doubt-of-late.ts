import type { PotNow } from "../../pot/pot-now.ts";

const DAY_MS = 86_400_000;

/** The newest observation of the last days that fitted no version of the pot and is of some kind; null without one. */
export function doubtOfLate(
  { doubts, plantedUtcMs }: Pick<PotNow, "doubts" | "plantedUtcMs">,
  of: { nowUtcMs: number; days: number; is: (data: Readonly<Record<string, unknown>>) => boolean },
): { atUtcMs: number } | null {
  const from = Math.max(of.nowUtcMs - of.days * DAY_MS, plantedUtcMs ?? Number.NEGATIVE_INFINITY);
  const times = doubts.flatMap(({ data }) =>
    data !== undefined && typeof data.atUtcMs === "number" && data.atUtcMs >= from && of.is(data)
      ? [data.atUtcMs]
      : [],
  );
  return times.length === 0 ? null : { atUtcMs: Math.max(...times) };
}
