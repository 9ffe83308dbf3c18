import type { PotNow } from "../../pot/pot-now.ts";
import type { Problem } from "../../problem.ts";

/** An observation that fits no course of the pot unless water cannot get out; null when there is none. */
export function blockedHoleDoubt({ doubts }: Pick<PotNow, "doubts">): Problem | null {
  return doubts.find(({ data }) => data?.question === "hole-blocked") ?? null;
}
