import type { JournalEntry } from "../../core/journal/entry.ts";
import type { Store } from "../store/open-store.ts";
import type { StoredPhoto } from "../store/photos-store.ts";

/** Keeps a photo with its entry, both or neither; the plan does not hang on it. @returns the entry */
export async function addPhoto(
  store: Store,
  {
    siteId,
    photo,
    entry: { text, ...stamp },
  }: {
    readonly siteId: string;
    readonly photo: StoredPhoto;
    readonly entry: Omit<JournalEntry, "body"> & { readonly text?: string };
  },
): Promise<JournalEntry> {
  const body = { kind: "photo" as const, ref: photo.id, ...(text === undefined ? {} : { text }) };
  const entry = { ...stamp, body };
  await store.together(async (step) => {
    await step.photos.put(siteId, photo);
    await step.journal.append(siteId, [entry]);
  });
  return entry;
}
