import type { PotNow } from "../../pot/pot-now.ts";
import { instantOf } from "../../site/instant.ts";
import type { Doubted } from "../pot-plan.ts";
import { type DoubtOfLate, doubtsOfLate } from "./doubt-of-late.ts";

/** Days for which a look that fits nothing is still asked about. Chosen by us: later nobody knows any more. */
const ASKED_DAYS = 30;

/** What to ask about looks and weighings of late that fitted no version of the pot, oldest first. */
export function doubtedOf(now: Pick<PotNow, "doubts" | "plantedUtcMs">, nowUtcMs: number): Doubted[] {
  return doubtsOfLate(now, { nowUtcMs, days: ASKED_DAYS }).map(doubted);
}

const UNITS = { weighed: "kg", watered: "ml" } as const;

function doubted({ entryId, kind, atUtcMs, expected, wetter, question }: DoubtOfLate): Doubted {
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
