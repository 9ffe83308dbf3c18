import { figureText } from "../../words/figures.ts";
import { gapBeforePercent } from "../../words/formatters.ts";
import type { Words } from "../../words/words.ts";

/** Ends of the names of fields, longest first where one ends in another, and the unit in which they are filled in. */
const UNITS: readonly (readonly [end: string, unit: string])[] = [
  ["MjPerM2PerDay", "MJ/m²"],
  ["Percent", "%"],
  ["Frac", "%"],
  ["Litres", "l"],
  ["Deg", "°"],
  ["Ml", "ml"],
  ["Mm", "mm"],
  ["Cm", "cm"],
  ["Kg", "kg"],
  ["C", "°C"],
  ["M", "m"],
];

/** The unit of a field as it follows a number, by the end of the field's name; nothing for a plain number. */
export function unitAfterNumber(field: string, { locale, trySay }: Words): string {
  const name = field.replace(/\.\d+$/, "");
  const unit = UNITS.find(([end]) => name.endsWith(end))?.[1];
  if (unit === undefined) return "";
  const gap = unit === "%" ? gapBeforePercent(locale) : unit === "°" ? "" : "\u00a0";
  return figureText({ number: "", unit: trySay(`unit.${unit}`) ?? unit, gap });
}
