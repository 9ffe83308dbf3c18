import { execFileSync } from "node:child_process";
import { cpSync, mkdirSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import process from "node:process";
import { expect, it } from "vitest";
import { tempFolder } from "../store/test-store.ts";

const ROOT = join(import.meta.dirname, "../../..");
const PRINT = `
  import { createHash } from "node:crypto";
  const { fixedFiles } = await import("./service/pages/fixed-files.ts");
  for (const file of ["/app.js", "/worker.js", "/style.css", "/icon.svg", "/app.webmanifest"]) {
    const answer = await fixedFiles().request(file);
    const bytes = Buffer.from(await answer.arrayBuffer());
    console.log(file, bytes.length, createHash("sha256").update(bytes).digest("hex"), answer.headers.get("etag"));
  }`;

function filesMadeIn(folder: string, env: Readonly<Record<string, string>>): string[] {
  const args = ["--import", "./service/runtime.mjs", "--input-type=module", "--eval", PRINT];
  const printed = execFileSync(process.execPath, args, {
    cwd: folder,
    env: { PATH: process.env.PATH, ...env },
    encoding: "utf8",
  });
  return printed.trim().split("\n");
}

it("what the browser gets is the same to the byte wherever and whenever it is compiled", () => {
  const elsewhere = join(tempFolder(), "another place");
  mkdirSync(elsewhere);
  for (const part of ["core", "service", "package.json", "tsconfig.json"])
    cpSync(join(ROOT, part), join(elsewhere, part), { recursive: true });
  symlinkSync(join(ROOT, "node_modules"), join(elsewhere, "node_modules"));
  const here = filesMadeIn(ROOT, { TZ: "UTC", LANG: "C" });
  expect(here).toHaveLength(5);
  expect(here.every((line) => Number(line.split(" ")[1]) > 100)).toBe(true);
  expect(filesMadeIn(elsewhere, { TZ: "Asia/Kathmandu", LANG: "bn_BD.UTF-8" })).toEqual(here);
});
