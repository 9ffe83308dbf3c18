import type { JournalEntry } from "../../journal/entry.ts";
import type { PotId } from "../../pot/pot.ts";
import { calendarDay } from "../../site/local-days.ts";
import type { Told } from "./brier.ts";
import type { ToldPlan } from "./told-plan.ts";

/**
 * Dryness as the last plan before told it, beside what the grower felt: a pot found light came to its refill point,
 * one found heavy did not. What lies between tells neither, and a pot watered since the plan is another pot.
 * @param entries corrections and undos already carried out
 */
export function toldDry(plans: readonly ToldPlan[], entries: readonly JournalEntry[]): Told[] {
  const newestFirst = [...plans].sort((a, b) => (a.issuedAt > b.issuedAt ? -1 : 1));
  return entries.flatMap((entry) => {
    const { body, potId, atUtcMs } = entry;
    if (potId === undefined || body.kind !== "checked") return [];
    if (body.feel !== "light" && body.feel !== "heavy") return [];
    const plan = newestFirst.find(({ issuedAt }) => Date.parse(issuedAt) <= atUtcMs);
    if (plan === undefined || wateredBetween(entries, { potId, plan, atUtcMs })) return [];
    const toldFrac = toldFor(plan, { potId, atUtcMs });
    return toldFrac === undefined ? [] : [{ toldFrac, cameTrue: body.feel === "light" }];
  });
}

/** Share told for the end of the day on which the pot was felt. */
function toldFor(plan: ToldPlan, felt: { potId: PotId; atUtcMs: number }): number | undefined {
  const day = calendarDay(felt.atUtcMs, plan.zone);
  const d = plan.days.findIndex((outline) => outline.day === day);
  const row = plan.pots.find(({ potId }) => potId === felt.potId);
  return d < 0 ? undefined : row?.outlook.reachesRefillShareFrac[d];
}

function wateredBetween(
  entries: readonly JournalEntry[],
  { potId, plan, atUtcMs }: { potId: PotId; plan: ToldPlan; atUtcMs: number },
): boolean {
  const fromUtcMs = Date.parse(plan.issuedAt);
  return entries.some(
    (entry) =>
      entry.potId === potId &&
      (entry.body.kind === "watered" || entry.body.kind === "planted") &&
      entry.atUtcMs >= fromUtcMs &&
      entry.atUtcMs <= atUtcMs,
  );
}
