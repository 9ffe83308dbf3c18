// Plain JavaScript on purpose: a Node too old to run the TypeScript must still be able to say so.
import * as nodeModule from "node:module";
import process from "node:process";

const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);
if (major < 22 || (major === 22 && minor < 19)) {
  process.stderr.write(
    `Leebench needs Node 22.19 or newer; this is ${process.versions.node}. ` +
      "Run it through npm (npm start, npm run demo): npm ci puts a current Node first.\n",
  );
  process.exit(2);
}

const { createHash, randomUUID } = await import("node:crypto");
const { globSync, mkdirSync, readFileSync, renameSync, writeFileSync } = await import("node:fs");
const { join } = await import("node:path");
const { fileURLToPath } = await import("node:url");

/**
 * What was compiled at one start is read back at the next, by what was compiled and with what: it is never stale. Where
 * nothing can be written, it is compiled again.
 */
const CACHE = join(import.meta.dirname, "../node_modules/.cache/leebench");
nodeModule.enableCompileCache(process.env.NODE_COMPILE_CACHE ?? join(CACHE, "code"));
/** A house runs for months; what its start has compiled is not left for its end. */
setTimeout(() => nodeModule.flushCompileCache(), 15_000).unref();

/** All pages at once, when the first is asked for: one call of the compiler takes a quarter of the time of a hundred. */
let pages;

nodeModule.registerHooks({
  load(url, context, nextLoad) {
    if (!url.endsWith(".tsx")) return nextLoad(url, context);
    pages ??= compiledPages();
    const source = pages.get(fileURLToPath(url));
    if (source === undefined) return nextLoad(url, context);
    return { format: "module", source, shortCircuit: true };
  },
});

function compiledPages() {
  const files = globSync(`${import.meta.dirname}/**/*.tsx`).sort();
  const digest = createHash("sha256").update(readFileSync(import.meta.filename));
  digest.update(nodeModule.createRequire(import.meta.url)("esbuild/package.json").version);
  for (const file of files) digest.update(`${file}\n`).update(readFileSync(file));
  const kept = join(CACHE, `pages-${digest.digest("hex").slice(0, 32)}.json`);
  try {
    return new Map(JSON.parse(readFileSync(kept, "utf8")));
  } catch {
    const compiled = compile(files);
    keep(kept, JSON.stringify(compiled));
    return new Map(compiled);
  }
}

/** Whole or not at all: others may start at the same moment. */
function keep(file, text) {
  try {
    mkdirSync(CACHE, { recursive: true });
    const half = `${file}.${randomUUID()}`;
    writeFileSync(half, text);
    renameSync(half, file);
  } catch {
    // A folder that is not ours to write; the next start compiles again.
  }
}

function compile(files) {
  const { buildSync } = nodeModule.createRequire(import.meta.url)("esbuild");
  const { outputFiles } = buildSync({
    entryPoints: files,
    outdir: import.meta.dirname,
    outbase: import.meta.dirname,
    outExtension: { ".js": ".tsx" },
    bundle: false,
    write: false,
    format: "esm",
    jsx: "automatic",
    jsxImportSource: "hono/jsx",
    sourcemap: "inline",
    target: "es2023",
  });
  return outputFiles.map(({ path, text }) => [path, text]);
}
