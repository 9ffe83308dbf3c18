import { randomBytes } from "node:crypto";

/** Stands in a page that is kept ready for many; whoever gets it has a part of their own put in its place. */
const SLOT = `slot${randomBytes(12).toString("hex")}`;

let made = 0;

/** An id for a form on a page: unlike any other on the page, and unlike anybody else's once the page is sent. */
export function newFormId(): string {
  made = (made + 1) % Number.MAX_SAFE_INTEGER;
  return `${SLOT}-${made}`;
}

/** A page in pieces between the places where an id of the reader's own goes, ready to be sent. */
export function piecesOf(html: string): readonly Buffer[] {
  return html.split(SLOT).map((piece) => Buffer.from(piece));
}

/** The page with ids that only this reader has. */
export function withOwnIds(pieces: readonly Buffer[]): Buffer<ArrayBuffer> {
  const own = Buffer.from(randomBytes(14).toString("hex"));
  return Buffer.concat(pieces.flatMap((piece, index) => (index === 0 ? [piece] : [own, piece])));
}
