import { constants, deflateRawSync } from "node:zlib";
import { type CrcOfHoles, crcOfHoles, crcWith } from "./crc-of-holes.ts";

/** A page with holes of one length, into which each reader's own id goes. */
export interface PageInParts {
  readonly plain: Holed;
  readonly packed: Holed;
  readonly crc: CrcOfHoles;
}

interface Holed {
  readonly bytes: Buffer;
  /** Where the holes begin, bytes. */
  readonly holes: readonly number[];
}

/** Reach of a back-reference in a compressed stream (RFC 1951, 2). */
const REACH_BYTES = 32_768;
/** No name, time or system stands in it (RFC 1952, 2.3). */
const GZIP_HEAD = Buffer.from([0x1f, 0x8b, 8, 0, 0, 0, 0, 0, 0, 255]);
const LAST_BLOCK = Buffer.from([0x03, 0x00]);
const TAIL_BYTES = 8;
/** Stands in no UTF-8 text (RFC 3629, 1). */
const NO_TEXT = 0xff;

/**
 * Takes apart a page once, so that it can be sent many times without compressing it again: the pieces between the holes
 * are compressed, the holes lie between them as they are.
 */
export function pageInParts(pieces: readonly Buffer[], ownIdBytes: number): PageInParts {
  const hole = Buffer.alloc(ownIdBytes, NO_TEXT);
  const plain = joined(pieces, hole);
  const packed = joined(packedPieces(pieces, hole), storedBlock(hole));
  const tail = Buffer.alloc(TAIL_BYTES);
  tail.writeUInt32LE(plain.bytes.length, TAIL_BYTES / 2);
  return {
    plain,
    crc: crcOfHoles(plain.bytes, { holes: plain.holes, hole }),
    packed: {
      bytes: Buffer.concat([GZIP_HEAD, packed.bytes, LAST_BLOCK, tail]),
      holes: packed.holes.map((at) => at + GZIP_HEAD.length + STORED_HEAD_BYTES),
    },
  };
}

export function plainPage({ plain }: PageInParts, own: Buffer): Buffer<ArrayBuffer> {
  return filled(plain, own);
}

/** The page as one gzip member. */
export function packedPage({ packed, crc }: PageInParts, own: Buffer): Buffer<ArrayBuffer> {
  const bytes = filled(packed, own);
  bytes.writeUInt32LE(crcWith(crc, own), bytes.length - TAIL_BYTES);
  return bytes;
}

function filled({ bytes, holes }: Holed, own: Buffer): Buffer<ArrayBuffer> {
  const copy = Buffer.allocUnsafe(bytes.length);
  bytes.copy(copy);
  for (const at of holes) own.copy(copy, at);
  return copy;
}

function joined(pieces: readonly Buffer[], between: Buffer): Holed {
  const holes: number[] = [];
  let length = 0;
  for (const piece of pieces) {
    if (length > 0 || holes.length > 0) length += between.length;
    length += piece.length;
    holes.push(length);
  }
  holes.pop();
  return {
    bytes: Buffer.concat(pieces.flatMap((piece, index) => (index ? [between, piece] : [piece]))),
    holes,
  };
}

/** No piece holds the byte of a hole, so that no back-reference reaches into one. */
function packedPieces(pieces: readonly Buffer[], hole: Buffer): Buffer[] {
  let before = Buffer.alloc(0);
  return pieces.map((piece) => {
    const dictionary = before.length > 0 ? { dictionary: before } : {};
    const packed = deflateRawSync(piece, { ...dictionary, finishFlush: constants.Z_SYNC_FLUSH });
    before = Buffer.concat([before, piece, hole]).subarray(-REACH_BYTES);
    return packed;
  });
}

const STORED_HEAD_BYTES = 5;

/** A block that is not compressed: its length, and that length's complement (RFC 1951, 3.2.4). */
function storedBlock(content: Buffer): Buffer {
  const head = Buffer.alloc(STORED_HEAD_BYTES);
  head.writeUInt16LE(content.length, 1);
  head.writeUInt16LE(~content.length & 0xffff, 3);
  return Buffer.concat([head, content]);
}
