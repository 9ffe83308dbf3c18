import type { JournalEntry } from "../../../core/journal/entry.ts";
import { photoSize } from "../../photos/photo-name.ts";

/** The photo of an entry that has one, in a room kept for it; the whole of it one tap deeper. */
export function PhotoOf({ entry: { body }, alt }: { entry: JournalEntry; alt: string }) {
  const size = body.kind === "photo" ? photoSize(body.ref) : null;
  if (body.kind !== "photo" || !size) return null;
  const address = `/photos/${body.ref}`;
  return (
    <a class="photo" href={address}>
      <img
        src={address}
        width={size.widthPx}
        height={size.heightPx}
        loading="lazy"
        decoding="async"
        alt={alt}
      />
    </a>
  );
}
