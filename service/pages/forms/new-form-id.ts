import { randomBytes } from "node:crypto";

/** Length of a reader's own part of an id, written in hexadecimal digits. */
export const OWN_ID_BYTES = 28;

/** Stands in a page that is kept ready for many; whoever gets it has a part of their own put in its place. */
const SLOT = `slot${randomBytes(12).toString("hex")}`;

let made = 0;

/** An id for a form on a page: unlike any other on the page, and unlike anybody else's once the page is sent. */
export function newFormId(): string {
  made = (made + 1) % Number.MAX_SAFE_INTEGER;
  return `${SLOT}-${made}`;
}

/** A page in pieces between the places where an id of the reader's own goes. */
export function piecesOf(html: string): readonly Buffer[] {
  return html.split(SLOT).map((piece) => Buffer.from(piece));
}

/** Unlike what any reader had before. */
export function newOwnId(): Buffer {
  return Buffer.from(randomBytes(OWN_ID_BYTES / 2).toString("hex"));
}
