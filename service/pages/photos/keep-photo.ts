import { z } from "zod";
import { addPhoto } from "../../photos/add-photo.ts";
import { cleanPhoto } from "../../photos/clean-photo.ts";
import { filledInUtcMs } from "../forms/filled-in-at.ts";
import { type FormRead, readForm, type Typed } from "../forms/form-problems.ts";
import { idOfEntry } from "../forms/id-of-form.ts";
import { freeText } from "../forms/typed-fields.ts";
import type { PageContext } from "../page-context.ts";

const PHOTO_TEXT = z
  .object({ text: freeText() })
  .transform(({ text }) => (text === undefined ? {} : { text }));

interface SentPhoto {
  readonly siteId: string;
  readonly potId: string;
  readonly typed: Typed;
  /** Null where no file was chosen. */
  readonly file: File | null;
}

/** Keeps the photo of a form; the id of its entry. */
export async function keepPhoto(
  context: PageContext,
  { siteId, potId, typed, file }: SentPhoto,
): Promise<FormRead<string>> {
  if (!file) return { ok: false, problems: [{ code: "no-photo", path: ["photo"] }] };
  const text = readForm(PHOTO_TEXT, typed);
  const photo = await cleanPhoto(new Uint8Array(await file.arrayBuffer()));
  if (!text.ok || !photo.ok)
    return { ok: false, problems: [text, photo].flatMap((part) => (part.ok ? [] : part.problems)) };
  const recordedUtcMs = context.now();
  const id = idOfEntry({ ...typed, ref: photo.value.id });
  const atUtcMs = filledInUtcMs(typed, recordedUtcMs);
  await addPhoto(context.store, {
    siteId,
    photo: photo.value,
    entry: { id, potId, atUtcMs, recordedUtcMs, ...text.value },
  });
  return { ok: true, value: id };
}
