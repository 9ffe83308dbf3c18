import type { Sharp } from "sharp";
import type { Outcome } from "../../core/problem.ts";
import type { StoredPhoto } from "../store/photos-store.ts";
import { photoName } from "./photo-name.ts";

/** Chosen by us: small enough that a thousand photos fill a corner of a small card. */
const LARGEST_KEPT_BYTES = 250_000;
/**
 * Longest side and quality, tried one after the other until the photo is small enough. Chosen by us: the first fills a
 * phone's screen, and gravel or bark, which pack badly, come through by the last.
 */
const WAYS = [
  { sidePx: 1280, quality: 74 },
  { sidePx: 1280, quality: 55 },
  { sidePx: 960, quality: 50 },
  { sidePx: 640, quality: 40 },
];
/** A file that says it is larger than this is not opened; chosen by us, above the sensors of phones. */
const LARGEST_PIXELS = 120_000_000;
/**
 * One whose lines come in several passes is held whole while it is read, two bytes and more a pixel: a file of 0.7 MB
 * with 119 million pixels took 250 MB and twelve seconds. Cameras do not write such files; chosen by us, above what is
 * sent on by messages.
 */
const LARGEST_PIXELS_IN_PASSES = 24_000_000;

let before: Promise<unknown> = Promise.resolve();

/**
 * A photo as it may be kept: turned upright, made small, and written anew, so that place, time, owner and camera, which
 * phones write into their files, are gone. JPEG, PNG and WebP are taken.
 *
 * @param bytes  the file as it came
 * @returns WebP of at most 250 kB, named by its content and size; problems "not-a-photo", "photo-too-large"
 */
export function cleanPhoto(bytes: Uint8Array): Promise<Outcome<StoredPhoto>> {
  if (!isPicture(bytes)) return Promise.resolve(fault("not-a-photo"));
  // One at a time: a small machine has little memory, and photos come seldom.
  const cleaned = before.then(() => opened(bytes));
  before = cleaned;
  return cleaned;
}

async function opened(bytes: Uint8Array): Promise<Outcome<StoredPhoto>> {
  try {
    const { default: sharp } = await import("sharp");
    sharp.concurrency(1);
    const photo = sharp(bytes, { limitInputPixels: LARGEST_PIXELS, failOn: "error" });
    const { width, height, isProgressive } = await photo.metadata();
    if (width * height > (isProgressive ? LARGEST_PIXELS_IN_PASSES : LARGEST_PIXELS))
      return fault("photo-too-large");
    return await smallEnough(photo.autoOrient());
  } catch {
    return fault("not-a-photo");
  }
}

async function smallEnough(photo: Sharp): Promise<Outcome<StoredPhoto>> {
  for (const { sidePx, quality } of WAYS) {
    const { data, info } = await photo
      .clone()
      .resize({ width: sidePx, height: sidePx, fit: "inside", withoutEnlargement: true })
      .webp({ quality })
      .toBuffer({ resolveWithObject: true });
    if (data.length <= LARGEST_KEPT_BYTES)
      return { ok: true, value: { id: photoName(data, info), bytes: data } };
  }
  return fault("photo-too-large");
}

/** Looks at the first bytes alone, so that nothing but these three formats is ever opened. */
function isPicture(bytes: Uint8Array): boolean {
  const begins = (mark: readonly number[], at = 0) => mark.every((byte, i) => bytes[at + i] === byte);
  return begins(JPEG) || begins(PNG) || (begins(RIFF) && begins(WEBP, 8));
}

const JPEG = [0xff, 0xd8, 0xff];
const PNG = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const RIFF = [...Buffer.from("RIFF")];
const WEBP = [...Buffer.from("WEBP")];

function fault(code: string): Outcome<StoredPhoto> {
  return { ok: false, problems: [{ code, path: ["photo"] }] };
}
