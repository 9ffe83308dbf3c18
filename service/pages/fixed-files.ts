import { type Context, Hono } from "hono";
import { hasAlready } from "../known-etag.ts";
import { pageCode, workerCode } from "./client-code.ts";
import { ICON_SVG } from "./icon.ts";
import { STYLE_ETAG, STYLE_TEXT } from "./style.ts";

/** Addresses are beside the manifest's own, so that they hold under a path as well. */
const MANIFEST = JSON.stringify({
  name: "Leebench",
  short_name: "Leebench",
  start_url: "./",
  display: "standalone",
  background_color: "#faf7f1",
  theme_color: "#faf7f1",
  icons: [{ src: "icon.svg", sizes: "any", type: "image/svg+xml", purpose: "any" }],
});

interface FixedFile {
  readonly text: string;
  readonly type: string;
  readonly etag: string;
}

const SCRIPT = { type: "text/javascript; charset=utf-8" };

const FILES: Readonly<Record<string, () => FixedFile>> = {
  "/style.css": () => ({ text: STYLE_TEXT, type: "text/css; charset=utf-8", etag: STYLE_ETAG }),
  "/app.js": () => ({ ...pageCode(), ...SCRIPT }),
  "/worker.js": () => ({ ...workerCode(), ...SCRIPT }),
  "/icon.svg": () => ({ text: ICON_SVG, type: "image/svg+xml", etag: '"icon-1"' }),
  "/app.webmanifest": () => ({ text: MANIFEST, type: "application/manifest+json", etag: '"manifest-2"' }),
};

/** Files that are the same for everybody; asked for again only to hear that they have not changed. */
export function fixedFiles(): Hono {
  const routes = new Hono();
  for (const [address, file] of Object.entries(FILES)) routes.get(address, (c) => fixedFile(c, file()));
  return routes;
}

function fixedFile(c: Context, { text, type, etag }: FixedFile): Response {
  c.header("ETag", etag);
  c.header("Cache-Control", "no-cache");
  if (hasAlready(c, etag)) return c.body(null, 304);
  return c.body(text, 200, { "Content-Type": type });
}
