import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import ExifReader from "exifreader";
import sharp from "sharp";
import { describe, expect, it } from "vitest";
import { cleanPhoto } from "../../../service/photos/clean-photo.ts";
import { photoSize } from "../../../service/photos/photo-name.ts";

/** Photos as two phones wrote them, place and camera inside; they come with two libraries that read such files. */
const PHONE_PHOTOS = [
  { file: "jpeg-exif/test/IMG_0001.JPG", make: "Apple", latDeg: 40.004, upright: [1280, 1280] },
  { file: "exif-parser/test/starfish.jpg", make: "Nokia", latDeg: 55.039, upright: [1278, 720] },
] as const;

function packed(file: string): Buffer {
  const [name = ""] = file.split("/");
  const require = createRequire(import.meta.url);
  return readFileSync(
    require.resolve(`${name}/package.json`).replace(/package\.json$/, file.slice(name.length + 1)),
  );
}

/** What an independent reader finds: tags of place, time, owner and camera, and blocks of XMP or IPTC. */
const TELLING = /GPS|Date|Make|Model|Serial|Owner|Artist|Software|Thumbnail|xmp|iptc/i;

function tellingTags(bytes: Uint8Array): string[] {
  const tags = ExifReader.load(Buffer.from(bytes), { includeUnknown: true });
  return Object.keys(tags).filter((tag) => TELLING.test(tag));
}

async function kept(bytes: Uint8Array) {
  const cleaned = await cleanPhoto(bytes);
  if (!cleaned.ok) throw new Error(JSON.stringify(cleaned.problems));
  return cleaned.value;
}

describe("a photo from a phone", () => {
  it.each(PHONE_PHOTOS)("of $make loses place, time and camera, and is small", async (photo) => {
    const raw = packed(photo.file);
    const before = ExifReader.load(raw);
    expect(Number(before.GPSLatitude?.description)).toBeCloseTo(photo.latDeg, 2);
    expect(String(before.Make?.description)).toContain(photo.make);
    const { id, bytes } = await kept(raw);
    expect(tellingTags(bytes)).toEqual([]);
    expect(Buffer.from(bytes).includes(photo.make)).toBe(false);
    expect(bytes.length).toBeLessThanOrEqual(250_000);
    expect(photoSize(id)).toEqual({ widthPx: photo.upright[0], heightPx: photo.upright[1] });
  });

  it("keeps the same name however often it is sent", async () => {
    const raw = packed(PHONE_PHOTOS[1].file);
    expect((await kept(raw)).id).toBe((await kept(raw)).id);
  });
});

/** Left half dark, right half light, turned by its tag to stand on its side; PNG and WebP carry tags too. */
async function halves(format: "jpeg" | "png" | "webp"): Promise<Buffer> {
  const light = { create: { width: 20, height: 30, channels: 3, background: "#eee" } } as const;
  return sharp({ create: { width: 40, height: 30, channels: 3, background: "#222" } })
    .composite([{ input: await sharp(light).png().toBuffer(), left: 20, top: 0 }])
    .withExif({ IFD0: { Artist: "Somebody" }, IFD3: { GPSLatitudeRef: "N", GPSLatitude: "51/1 30/1 0/1" } })
    .withMetadata({ orientation: 6 })
    .toFormat(format)
    .toBuffer();
}

describe("a picture of each kind", () => {
  it.each(["jpeg", "png", "webp"] as const)("%s is turned upright and loses its tags", async (format) => {
    const raw = await halves(format);
    expect(tellingTags(raw)).not.toEqual([]);
    const { id, bytes } = await kept(raw);
    expect(tellingTags(bytes)).toEqual([]);
    // Tag 6: what is left in the file is at the top to the eye. [Exif 2.32, table 8]
    expect(photoSize(id)).toEqual({ widthPx: 30, heightPx: 40 });
    const { data, info } = await sharp(bytes).greyscale().raw().toBuffer({ resolveWithObject: true });
    const rowMean = (y: number) => data[y * info.width * info.channels]!;
    expect(rowMean(4)).toBeLessThan(80);
    expect(rowMean(35)).toBeGreaterThan(180);
  });

  it("of noise, which packs badly, still stays within the limit", async () => {
    let state = 7;
    const noise = Uint8Array.from({ length: 900 * 600 * 3 }, () => {
      state = (state * 48_271) % 2_147_483_647;
      return state & 255;
    });
    const raw = await sharp(noise, { raw: { width: 900, height: 600, channels: 3 } })
      .jpeg()
      .toBuffer();
    expect((await sharp(raw).webp({ quality: 74 }).toBuffer()).length).toBeGreaterThan(250_000);
    expect((await kept(raw)).bytes.length).toBeLessThanOrEqual(250_000);
  });

  it.each([
    ["text", Buffer.from("not a picture at all")],
    ["a drawing with script", Buffer.from('<svg xmlns="http://www.w3.org/2000/svg"><script/></svg>')],
    ["nothing", Buffer.alloc(0)],
    ["a photo cut off at its head", packed(PHONE_PHOTOS[1].file).subarray(0, 200)],
  ])("refuses %s", async (_, bytes) => {
    expect(await cleanPhoto(bytes)).toEqual({
      ok: false,
      problems: [{ code: "not-a-photo", path: ["photo"] }],
    });
  });
});
