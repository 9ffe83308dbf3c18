import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";

const STYLE = readFileSync(new URL("../../../service/pages/style/base.css", import.meta.url), "utf8");

/** The colours of one scheme by name, as the style sheet has them. */
function tokens(scheme: "light" | "dark"): Record<string, string> {
  const from = scheme === "light" ? 0 : STYLE.indexOf("prefers-color-scheme: dark");
  const block = STYLE.slice(from, STYLE.indexOf("}", from));
  return Object.fromEntries(
    [...block.matchAll(/--(\w+): (#[0-9a-f]{6});/g)].map(([, name, colour]) => [name, colour]),
  );
}

/** Contrast ratio. [WCAG 2.2, definitions of relative luminance and contrast ratio, from memory] */
function contrast(a: string, b: string): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((x, y) => y - x) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

function luminance(colour: string): number {
  const [r, g, b] = [1, 3, 5]
    .map((at) => Number.parseInt(colour.slice(at, at + 2), 16) / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4)) as [number, number, number];
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

// Black on white is 21 and mid grey #767676 on white 4.54, as WCAG's own examples have it (from memory).
it("reckons contrast as the standard does", () => {
  expect(contrast("#000000", "#ffffff")).toBeCloseTo(21, 6);
  expect(contrast("#767676", "#ffffff")).toBeCloseTo(4.54, 2);
});

describe.each(["light", "dark"] as const)("in %s", (scheme) => {
  const colours = tokens(scheme);

  it.each(["ink", "warn"])("deeds and what cannot wait, in %s, reach 7 to 1", (name) => {
    for (const ground of ["paper", "laid"]) {
      expect(contrast(colours[name]!, colours[ground]!), `${name} on ${ground}`).toBeGreaterThanOrEqual(7);
    }
  });

  it.each(["faint", "clay", "slate"])("%s reaches 4.5 to 1", (name) => {
    for (const ground of ["paper", "laid"]) {
      expect(contrast(colours[name]!, colours[ground]!), `${name} on ${ground}`).toBeGreaterThanOrEqual(4.5);
    }
  });
});
