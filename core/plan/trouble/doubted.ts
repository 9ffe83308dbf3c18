import type { DoubtData } from "../../pot/learn/observe.ts";
import type { PotNow } from "../../pot/pot-now.ts";
import { instantOf } from "../../site/instant.ts";
import type { Doubted } from "../plan.ts";

const DAY_MS = 86_400_000;
/** Days for which a look that fits nothing is still asked about. Chosen by us: later nobody knows any more. */
const ASKED_DAYS = 30;

/** Looks and weighings of late that fitted no version of the pot, oldest first. */
export function doubtedOf(
  { doubts, plantedUtcMs }: Pick<PotNow, "doubts" | "plantedUtcMs">,
  nowUtcMs: number,
): Doubted[] {
  const fromUtcMs = Math.max(nowUtcMs - ASKED_DAYS * DAY_MS, plantedUtcMs ?? Number.NEGATIVE_INFINITY);
  return doubts.flatMap(({ code, path, data }) => {
    if (code !== "does-not-fit" || data === undefined) return [];
    const doubt = data as unknown as DoubtData;
    return doubt.atUtcMs >= fromUtcMs ? [doubted(String(path[1]), doubt)] : [];
  });
}

const UNITS = { weighed: "kg", watered: "ml" } as const;

function doubted(entryId: string, { kind, atUtcMs, expected, wetter, question }: DoubtData): Doubted {
  const unit = kind === "checked" ? null : UNITS[kind];
  return {
    entryId,
    notedAt: instantOf(atUtcMs),
    ...(unit === null
      ? {}
      : { expected: { unit, low: rounded(expected.low), high: rounded(expected.high) } }),
    wetter,
    question,
  };
}

/** A gram of a pot, a microlitre of a can: finer than anybody weighs or pours. */
function rounded(value: number): number {
  return Math.round(value * 1000) / 1000;
}
