import { gapBeforePercent, numberFormat } from "./formatters.ts";
import type { Figure, Units } from "./units.ts";

interface Measure {
  /** The end of a name that carries this measure. */
  readonly suffix: string;
  readonly metric: (value: number) => Shown;
  readonly us: (value: number) => Shown;
}

interface Shown {
  readonly value: number;
  readonly digits: number;
  readonly unit: string;
}

const shown = (value: number, digits: number, unit: string): Shown => ({ value, digits, unit });
const toHalf = (value: number): number => Math.round(value * 2) / 2;

const litres = (ml: number): Shown =>
  Math.abs(ml) < 995 ? shown(Math.round(ml / 5) * 5, 0, "ml") : shown(ml / 1000, 1, "l");
const ounces = (ml: number): Shown =>
  Math.abs(ml) < 900 ? shown(ml / 29.5735, 0, "fl oz") : shown(ml / 946.353, 1, "qt");
const millimetres = (mm: number): Shown => shown(mm, Math.abs(mm) < 3 ? 1 : 0, "mm");
const kilograms = (kg: number): Shown => shown(kg, Math.abs(kg) < 10 ? 1 : 0, "kg");

/** A chance is never nought or whole: what was not foreseen is still possible. */
const chance = (frac: number): Shown => shown(Math.min(99, Math.max(1, Math.round(frac * 100))), 0, "%");

/** Longest suffix first. Half degrees: a forecast is no finer, and whole ones hide which side of a limit it is. */
const MEASURES: readonly Measure[] = [
  {
    suffix: "MjPerM2",
    metric: (v) => shown(v, 1, "MJ/m²"),
    us: (v) => shown(v, 1, "MJ/m²"),
  },
  { suffix: "KgPerL", metric: (v) => shown(v, 2, "kg/l"), us: (v) => shown(v * 62.428, 0, "lb/ft³") },
  { suffix: "MmPerH", metric: (v) => shown(v, 0, "mm/h"), us: (v) => shown(v / 25.4, 2, "in/h") },
  { suffix: "MPerS", metric: (v) => shown(v * 3.6, 0, "km/h"), us: (v) => shown(v * 2.23694, 0, "mph") },
  { suffix: "ShareFrac", metric: chance, us: chance },
  { suffix: "Frac", metric: (v) => shown(v * 100, 0, "%"), us: (v) => shown(v * 100, 0, "%") },
  { suffix: "Ml", metric: litres, us: ounces },
  { suffix: "Mm", metric: millimetres, us: (v) => shown(v / 25.4, 2, "in") },
  { suffix: "Cm", metric: (v) => shown(v, 1, "cm"), us: (v) => shown(v / 2.54, 1, "in") },
  { suffix: "Kg", metric: kilograms, us: (v) => shown(v * 2.20462, 0, "lb") },
  { suffix: "C", metric: (v) => shown(toHalf(v), 1, "°C"), us: (v) => shown(v * 1.8 + 32, 0, "°F") },
];

/** The measure that a name carries, e.g. "coldestC" a temperature; undefined for plain numbers. */
function measureOf(name: string): Measure | undefined {
  return MEASURES.find(({ suffix }) => name.endsWith(suffix) && name !== suffix);
}

/** How figures are written: measures, numerals, and the names of units. */
interface FigureManner {
  readonly units: Units;
  readonly locale: string;
  /** A unit such as "ml" as the language writes it. */
  unitText(unit: string): string;
}

/**
 * A value as number and unit in the grower's measures, by the unit at the end of its name.
 * Undefined when the name carries no measure, or the value is not finite.
 */
export function figureOf(
  named: { name: string; value: number },
  { units, locale, unitText }: FigureManner,
): Figure | undefined {
  const measure = measureOf(named.name);
  if (!measure || !Number.isFinite(named.value)) return undefined;
  const { value, digits, unit } = measure[units](named.value);
  // Adding zero turns -0 into 0, which would print as "-0".
  const rounded = Number(value.toFixed(digits)) + 0;
  const number = numberFormat(locale, { mostDigits: digits }).format(rounded);
  return {
    number: number.replace("-", "−"),
    unit: unitText(unit),
    gap: unit === "%" ? gapBeforePercent(locale) : "\u00a0",
  };
}

/** The figure in running text, its parts held together. */
export function figureText({ number, unit, gap }: Figure): string {
  return `${number}${gap}${unit}`;
}
