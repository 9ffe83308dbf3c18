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

const { transformSync } = await import("esbuild");
const { readFileSync } = await import("node:fs");
const { fileURLToPath } = await import("node:url");

nodeModule.registerHooks({
  load(url, context, nextLoad) {
    if (!url.endsWith(".tsx")) return nextLoad(url, context);
    const file = fileURLToPath(url);
    const { code } = transformSync(readFileSync(file, "utf8"), {
      loader: "tsx",
      jsx: "automatic",
      jsxImportSource: "hono/jsx",
      sourcefile: file,
      sourcemap: "inline",
      target: "es2023",
    });
    return { format: "module", source: code, shortCircuit: true };
  },
});
