import { readFileSync } from "node:fs";
import { join } from "node:path";

/** The version of this program, from the one place where it stands. */
export const VERSION: string = JSON.parse(
  readFileSync(join(import.meta.dirname, "../package.json"), "utf8"),
).version;
