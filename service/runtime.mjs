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

const { buildSync } = await import("esbuild");
const { globSync } = await import("node:fs");
const { fileURLToPath } = await import("node:url");

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
  const { outputFiles } = buildSync({
    entryPoints: globSync(`${import.meta.dirname}/**/*.tsx`),
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
  return new Map(outputFiles.map(({ path, text }) => [path, text]));
}
