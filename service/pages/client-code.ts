import { createHash } from "node:crypto";
import { createRequire } from "node:module";
import { fileURLToPath } from "node:url";

/** A script as the browser gets it: one file, small. */
export interface ClientCode {
  readonly text: string;
  readonly etag: string;
}

type Bundler = Pick<typeof import("esbuild"), "buildSync">;

/** Bundled when a browser first asks: a house starts sooner without the bundler. */
function bundled(entry: string): () => ClientCode {
  let made: ClientCode | undefined;
  return () => (made ??= bundle(entry));
}

function bundle(entry: string): ClientCode {
  const { buildSync } = createRequire(import.meta.url)("esbuild") as Bundler;
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
export const pageCode = bundled("./client/start.ts");

/** Pages and forms without signal. */
export const workerCode = bundled("./worker/worker.ts");
