import { createHash } from "node:crypto";
import { fileURLToPath } from "node:url";
import { buildSync } from "esbuild";

/** A script as the browser gets it: one file, small. */
export interface ClientCode {
  readonly text: string;
  readonly etag: string;
}

function bundled(entry: string): ClientCode {
  const { outputFiles } = buildSync({
    entryPoints: [fileURLToPath(new URL(entry, import.meta.url))],
    bundle: true,
    minify: true,
    write: false,
    format: "iife",
    target: "es2022",
    tsconfigRaw: "{}",
  });
  const text = outputFiles[0]?.text ?? "";
  return { text, etag: `"${createHash("sha256").update(text).digest("base64url").slice(0, 16)}"` };
}

/** Instant ticks and the state line. */
export const PAGE_CODE = bundled("./client/start.ts");

/** Pages and forms without signal. */
export const WORKER_CODE = bundled("./worker/worker.ts");
