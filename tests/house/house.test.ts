import { readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { type Import, importsOf, ROOT, sourceFiles } from "./source-files.ts";

const CODE = /^(core|service|demo|tests)\/.*\.tsx?$/;

describe("core", () => {
  it("imports only core", () => {
    const files = sourceFiles(/^core\/.*\.ts$/);
    expect(files.length).toBeGreaterThan(10);
    const strangers = files.flatMap(importsOf).filter(({ to }) => !to.startsWith("core/"));
    expect(strangers).toEqual([]);
  });

  it("holds no clock, chance, process or console", () => {
    const impure =
      /\bDate\.now\b|\bnew Date\(\)|\bMath\.random\b|(?<![-\w])process\.|\bconsole\.|\bperformance\./;
    const guilty = sourceFiles(/^core\/.*\.ts$/).filter((file) =>
      impure.test(readFileSync(join(ROOT, file), "utf8")),
    );
    expect(guilty).toEqual([]);
  });
});

describe("imports", () => {
  it("go one way: the product never imports tests, service never sits in core's way", () => {
    const wrong = sourceFiles(/^(core|service)\/.*\.tsx?$/)
      .flatMap(importsOf)
      .filter(({ to }) => to.startsWith("tests/"));
    expect(wrong).toEqual([]);
  });

  it("close no cycle", () => {
    expect(cyclesIn(sourceFiles(CODE).flatMap(importsOf))).toEqual([]);
  });
});

describe("layout", () => {
  it("holds nothing at the top level but what was agreed", () => {
    const agreed =
      /^(service|core|tests|demo|README\.md|DEVELOPERS\.md|package\.json|package-lock\.json|tsconfig\.json|Dockerfile|LICENSE|CHANGELOG\.md|biome\.json|vitest\.config\.ts|\..*)$/;
    const top = new Set(sourceFiles(/./).map((file) => file.split("/")[0] ?? ""));
    expect([...top].filter((name) => !agreed.test(name))).toEqual([]);
  });

  it("collects every test file", () => {
    const looksLikeTest = sourceFiles(/\.(test|spec)\.[cm]?[jt]sx?$/);
    expect(looksLikeTest.filter((file) => !/^tests\/.*\.test\.tsx?$/.test(file))).toEqual([]);
  });

  it("names no path of one machine", () => {
    const personal = /(?<![\w.])\/(home|Users|root|work)\/[a-z]/;
    const guilty = sourceFiles(/\.(tsx?|mjs|json|md|css|yml)$|Dockerfile$/)
      .filter((file) => file !== "package-lock.json" && !file.startsWith("tests/house/"))
      .filter((file) => personal.test(readFileSync(join(ROOT, file), "utf8")));
    expect(guilty).toEqual([]);
  });
});

/** Loops among imports that survive to run time, each as the files it passes through. */
function cyclesIn(imports: readonly Import[]): string[][] {
  const next = new Map<string, string[]>();
  for (const { from, to, typeOnly } of imports) {
    if (!typeOnly && CODE.test(to)) next.set(from, [...(next.get(from) ?? []), to]);
  }
  const done = new Set<string>();
  const cycles: string[][] = [];
  const walk = (file: string, path: string[]): void => {
    const at = path.indexOf(file);
    if (at >= 0) cycles.push(path.slice(at));
    if (at >= 0 || done.has(file)) return;
    for (const target of next.get(file) ?? []) walk(target, [...path, file]);
    done.add(file);
  };
  for (const file of next.keys()) walk(file, []);
  return cycles;
}
