import { join } from "node:path";
import { openStore } from "../service/store/open-store.ts";
import { demoCollection } from "./harbour.ts";
import { demoJournal } from "./harbour-journal.ts";

/** Writes the invented roof and its diary into a store of its own. */
export async function fillStore(dataDir: string, nowUtcMs: number): Promise<void> {
  const store = await openStore(join(dataDir, "leebench.db"));
  try {
    const { site, spots, mixes, pots } = demoCollection;
    await store.together(async (step) => {
      await step.sites.put(site);
      for (const spot of spots) await step.spots.put(site.id, spot);
      for (const mix of mixes) await step.mixes.put(site.id, mix);
      for (const pot of pots) await step.pots.put(site.id, pot);
      await step.journal.append(site.id, demoJournal(nowUtcMs));
    });
  } finally {
    await store.close();
  }
}
