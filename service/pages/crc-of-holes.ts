import { crc32 } from "node:zlib";

/** CRC-32 of a text in which the same bytes stand in several places, reckoned without reading the text again. */
export interface CrcOfHoles {
  /** Of the text as it was given. */
  readonly crc: number;
  /** Of what stood in each hole. */
  readonly holeCrc: number;
  /** How far each hole is from the end, all together, as a polynomial. */
  readonly reach: number;
}

/** The polynomial of RFC 1952, section 8, its bits in reverse as there. */
const POLYNOMIAL = 0xedb88320;
const ONE = 0x80000000;
/** x to the eighth: one byte further from the end. */
const BYTE = 0x00800000;

export function crcOfHoles(
  text: Buffer,
  { holes, hole }: { holes: readonly number[]; hole: Buffer },
): CrcOfHoles {
  const reaches = holes.map((at) => power(text.length - at - hole.length));
  return {
    crc: crc32(text),
    holeCrc: crc32(hole),
    reach: reaches.reduce((sum, reach) => sum ^ reach, 0),
  };
}

/** With `own` in every hole: the code is linear, so that only the difference is carried to the end. */
export function crcWith({ crc, holeCrc, reach }: CrcOfHoles, own: Buffer): number {
  return (crc ^ product(reach, crc32(own) ^ holeCrc)) >>> 0;
}

/** Of two polynomials over two elements, modulo that of the code. */
function product(a: number, b: number): number {
  let [sum, shifted] = [0, b];
  for (let bit = ONE; bit !== 0; bit >>>= 1) {
    if (a & bit) sum ^= shifted;
    shifted = shifted & 1 ? (shifted >>> 1) ^ POLYNOMIAL : shifted >>> 1;
  }
  return sum;
}

function power(byteCount: number): number {
  let [result, square] = [ONE, BYTE];
  for (let left = byteCount; left > 0; left = Math.floor(left / 2)) {
    if (left % 2 === 1) result = product(result, square);
    square = product(square, square);
  }
  return result;
}
