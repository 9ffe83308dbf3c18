import { createHash } from "node:crypto";

const NAME = /^[0-9a-f]{32}-(\d{1,5})x(\d{1,5})$/;

/** Name of a kept photo by its content; the size stands in it, so that a page keeps its room before the photo is there. */
export function photoName(bytes: Uint8Array, { width, height }: { width: number; height: number }): string {
  return `${createHash("sha256").update(bytes).digest("hex").slice(0, 32)}-${width}x${height}`;
}

/** Width and height of a kept photo, px; null for a name that is none. */
export function photoSize(name: string): { widthPx: number; heightPx: number } | null {
  const size = NAME.exec(name);
  return size ? { widthPx: Number(size[1]), heightPx: Number(size[2]) } : null;
}
