import { z } from "zod";
import type { JournalEntry } from "../../../core/journal/entry.ts";
import { settleEntries } from "../../../core/journal/settle-entries.ts";
import { InstantMs, instantText } from "../../case/instant.ts";
import { addPhoto } from "../../photos/add-photo.ts";
import { cleanPhoto } from "../../photos/clean-photo.ts";
import { photoSize } from "../../photos/photo-name.ts";
import { type ApiRoute, notThere, unfit } from "../api-route.ts";
import { PartQuery, partOf, partSchema } from "../page-of.ts";
import { idUnderKey } from "../under-key.ts";

const group = "photos";

const Photo = z.object({
  id: z.string(),
  entryId: z.string().describe("Undoing this entry takes the photo off the pages."),
  potId: z.string(),
  at: z.string(),
  text: z.string().nullable(),
  widthPx: z.int(),
  heightPx: z.int(),
});

/** Photos stand in the journal; they are kept small and without what phones write into them. */
export const photoRoutes: readonly ApiRoute[] = [
  {
    method: "GET",
    path: "/sites/{siteId}/photos",
    id: "listPhotos",
    group,
    summary: "Photos of the journal, oldest first",
    query: PartQuery.extend({ potId: z.string().max(100).optional().describe("Only of this pot.") }),
    answer: partSchema(Photo),
    async handle({ context, site, query }) {
      const { entries } = settleEntries(await context.store.journal.list(site.id));
      const photos = entries
        .flatMap(photoOf)
        .filter(({ potId }) => query.potId === undefined || potId === query.potId);
      return partOf(photos, { asked: query, idOf: ({ entryId }) => entryId });
    },
  },
  {
    method: "POST",
    path: "/sites/{siteId}/pots/{potId}/photos",
    id: "addPhoto",
    group,
    summary: "Keeps a photo of a pot, sent as the body itself, up to 16 mebibytes",
    query: z.object({
      text: z.string().trim().min(1).max(2000).optional().describe("A few words about it."),
      at: InstantMs.optional().describe("When it was taken; now when left out."),
    }),
    takesBytes: ["image/jpeg", "image/png", "image/webp"],
    answer: Photo,
    answerStatus: 201,
    async handle({ c, context: { store, now }, site, params, query, body }) {
      const isThere = (await store.pots.list(site.id)).some(({ id }) => id === params.potId);
      if (!isThere) return notThere("pot");
      const { at = now(), text } = query;
      if (at > now()) return unfit([{ code: "day-to-come", path: ["at"] }]);
      const photo = await cleanPhoto(body);
      if (!photo.ok) return unfit(photo.problems);
      const id = `api.${idUnderKey(c, [params.potId, photo.value.id])}`;
      const stamp = { id, potId: params.potId!, atUtcMs: at, recordedUtcMs: now() };
      const entry = await addPhoto(store, {
        siteId: site.id,
        photo: photo.value,
        entry: { ...stamp, ...(text === undefined ? {} : { text }) },
      });
      return { body: photoOf(entry)[0] };
    },
  },
  {
    method: "GET",
    path: "/sites/{siteId}/photos/{photoId}",
    id: "getPhoto",
    group,
    summary: "One photo, WebP",
    answerType: "image/webp",
    async handle({ context, site, params }) {
      const bytes = await context.store.photos.get(site.id, params.photoId!);
      return bytes ? { file: Uint8Array.from(bytes) } : notThere("photo");
    },
  },
];

function photoOf({ id: entryId, potId = "", atUtcMs, body }: JournalEntry): z.output<typeof Photo>[] {
  const size = body.kind === "photo" ? photoSize(body.ref) : null;
  if (body.kind !== "photo" || !size) return [];
  return [{ id: body.ref, entryId, potId, at: instantText(atUtcMs), text: body.text ?? null, ...size }];
}
