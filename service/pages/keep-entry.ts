import type { JournalEntry } from "../../core/journal/entry.ts";
import type { PageContext } from "./page-context.ts";

type Kept = Omit<JournalEntry, "recordedUtcMs" | "atUtcMs"> & { readonly atUtcMs?: number };

/** Writes entries into the site's journal and has the plan made anew. */
export async function keepEntry(context: PageContext, ...kept: readonly Kept[]): Promise<void> {
  const [site] = await context.store.sites.list();
  if (!site) return;
  const recordedUtcMs = context.now();
  await context.store.journal.append(
    site.id,
    kept.map((entry) => ({ atUtcMs: recordedUtcMs, ...entry, recordedUtcMs })),
  );
  await context.replan(site.id);
}
