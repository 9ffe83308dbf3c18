import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { dirname, join, normalize, resolve } from "node:path";

export const ROOT = resolve(import.meta.dirname, "../..");

/** Files that git tracks or would track, as paths from the root. */
export function sourceFiles(pattern: RegExp): string[] {
  const args = ["ls-files", "--cached", "--others", "--exclude-standard"];
  const listed = execFileSync("git", args, { cwd: ROOT, encoding: "utf8" });
  return listed.split("\n").filter((file) => pattern.test(file) && existsSync(join(ROOT, file)));
}

export interface Import {
  readonly from: string;
  readonly to: string;
  /** Erased at run time, so it cannot close a cycle. */
  readonly typeOnly: boolean;
}

const IMPORT = /^\s*(?:import|export)\s+(type\s+)?(?:[^"';]*?\sfrom\s+)?["']([^"']+)["']/gm;

/** Every import and re-export of a file; relative targets as paths from the root. */
export function importsOf(file: string): Import[] {
  const text = readFileSync(join(ROOT, file), "utf8");
  return [...text.matchAll(IMPORT)].map(([, type, target = ""]) => ({
    from: file,
    to: target.startsWith(".") ? normalize(join(dirname(file), target)) : target,
    typeOnly: type !== undefined,
  }));
}
