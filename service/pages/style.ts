import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";

/** Parts of the one style sheet, in the order in which later ones may lean on earlier ones. */
const PARTS = ["base", "forms", "brief", "pots", "sheets", "drawings", "print"];

/** The one style sheet, read once. */
export const STYLE_TEXT = PARTS.map((part) =>
  readFileSync(new URL(`./style/${part}.css`, import.meta.url), "utf8"),
).join("\n");

export const STYLE_ETAG = `"${createHash("sha256").update(STYLE_TEXT).digest("base64url").slice(0, 16)}"`;
