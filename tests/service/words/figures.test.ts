import { expect, it } from "vitest";
import { figureOf, figureText } from "../../../service/words/figures.ts";

const manner = (units: "metric" | "us") => ({
  units,
  locale: units === "us" ? "en-US" : "en-GB",
  unitText: (unit: string) => unit,
});

const text = (name: string, value: number, units: "metric" | "us" = "metric") => {
  const figure = figureOf({ name, value }, manner(units));
  return figure && figureText(figure).replaceAll("\u00a0", " ");
};

it.each([
  ["waterMl", 847, "845 ml"],
  ["waterMl", 1240, "1.2 l"],
  ["coldestC", -1.26, "−1.5 °C"],
  ["coldestC", -0.1, "0 °C"],
  ["rainMm", 0.4, "0.4 mm"],
  ["rainMm", 18.4, "18 mm"],
  ["gustMPerS", 15, "54 km/h"],
  ["leftFrac", 0.314, "31%"],
  ["massKg", 31.4, "31 kg"],
])("writes %s %d as %s", (name, value, expected) => {
  expect(text(name, value)).toBe(expected);
});

// Exact definitions: 1 in = 25.4 mm, 1 mile = 1609.344 m, 1 lb = 0.45359237 kg, °F = 1.8 °C + 32 (NIST SP 811, from memory).
it.each([
  ["coldestC", -40, "−40 °F"],
  ["hottestC", 100, "212 °F"],
  ["rainMm", 25.4, "1 in"],
  ["gustMPerS", 44.704, "100 mph"],
  ["massKg", 45.359237, "100 lb"],
  ["waterMl", 295.735, "10 fl oz"],
  ["waterMl", 946.353, "1 qt"],
])("writes %s %d in the measures of the United States as %s", (name, value, expected) => {
  expect(text(name, value, "us")).toBe(expected);
});

it("knows no figure without a unit, and none for what is unknown", () => {
  expect(text("potCount", 3)).toBeUndefined();
  expect(text("coldestC", Number.NaN)).toBeUndefined();
});
