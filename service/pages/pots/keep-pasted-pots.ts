import type { PageContext } from "../page-context.ts";
import type { PastedPot } from "./paste-rows.ts";

/** Keeps all pots of a table with their past, or none; the plan is made anew. */
export async function keepPastedPots(
  { store, replan }: PageContext,
  { siteId, pots }: { readonly siteId: string; readonly pots: readonly PastedPot[] },
): Promise<void> {
  await store.together(async (step) => {
    for (const { pot } of pots) await step.pots.put(siteId, pot);
    await step.journal.append(
      siteId,
      pots.flatMap(({ entries }) => entries),
    );
  });
  await replan(siteId);
}
