import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";

/** The one style sheet, read once. */
export const STYLE_TEXT = readFileSync(new URL("./style.css", import.meta.url), "utf8");

export const STYLE_ETAG = `"${createHash("sha256").update(STYLE_TEXT).digest("base64url").slice(0, 16)}"`;
