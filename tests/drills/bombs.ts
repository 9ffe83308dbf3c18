import { crc32, deflateSync, gzipSync } from "node:zlib";

/** A picture of one colour, black and white, in as few bytes as the format allows (PNG, third edition, 5 and 11). */
export function flatPng({ widthPx, heightPx }: { widthPx: number; heightPx: number }): Uint8Array {
  const size = Buffer.alloc(13);
  size.writeUInt32BE(widthPx, 0);
  size.writeUInt32BE(heightPx, 4);
  // One bit a pixel, grey, no filter.
  size.set([1, 0, 0, 0, 0], 8);
  const lines = Buffer.alloc(heightPx * (1 + Math.ceil(widthPx / 8)));
  const parts = [
    chunk("IHDR", size),
    chunk("IDAT", deflateSync(lines, { level: 9 })),
    chunk("IEND", Buffer.alloc(0)),
  ];
  return Buffer.concat([Buffer.from("89504e470d0a1a0a", "hex"), ...parts]);
}

function chunk(name: string, data: Uint8Array): Buffer {
  const named = Buffer.concat([Buffer.from(name, "latin1"), data]);
  const [length, sum] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  sum.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, sum]);
}

/** Zeros, packed some thousand to one. */
export function zipped(unpackedBytes: number): Uint8Array {
  return gzipSync(Buffer.alloc(unpackedBytes), { level: 9 });
}

export const SMALL_PICTURE = flatPng({ widthPx: 16, heightPx: 9 });

/** Few bytes that swell when opened: a picture of 900 million pixels, 40 MB of zeros, and a picture that only says so. */
export const BOMBS: readonly Uint8Array[] = [
  flatPng({ widthPx: 30_000, heightPx: 30_000 }),
  zipped(40 * 2 ** 20),
  Buffer.from("89504e470d0a1a0a0000000d494844527fffffff7fffffff0806000000", "hex"),
  // The head of a ZIP archive.
  Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0, 0, 0, 8, 0]),
];
