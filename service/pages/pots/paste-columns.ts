import type { Words } from "../../words/words.ts";
import { bare } from "../forms/name-problems.ts";

/** Columns that every pasted table has, in the order of the example; those of the pot form, with mix and spot by name. */
export const NEEDED_COLUMNS = [
  "name",
  "groupId",
  "canopyWidthCm",
  "plantHeightCm",
  "topCm",
  "baseCm",
  "heightCm",
  "material",
  "mix",
  "spot",
] as const;

/** Those that may be left out: the pot form begins with a value for them, or does without. */
export const FURTHER_COLUMNS = [
  "count",
  "shape",
  "rimGapCm",
  "topDressingCm",
  "saucerCm",
  "plantedDay",
  "wateredDay",
] as const;

export type PasteColumn = (typeof NEEDED_COLUMNS | typeof FURTHER_COLUMNS)[number];

const COLUMNS: readonly PasteColumn[] = [...NEEDED_COLUMNS, ...FURTHER_COLUMNS];

/** Columns that the pot form calls by another field than their own. */
const OTHERWISE = { name: "pot-name", mix: "mixId", spot: "spotId" } as const;
const isOtherwise = (column: PasteColumn): column is keyof typeof OTHERWISE => column in OTHERWISE;
const LENGTH = /Cm$/;

/** A column as the page calls it. */
export function columnLabel(column: PasteColumn, { say }: Words): string {
  return say(isOtherwise(column) ? `field.${OTHERWISE[column]}` : `field.${column}`);
}

/** The same with its unit, as it heads the table. */
export function columnTitle(column: PasteColumn, words: Words): string {
  const label = columnLabel(column, words);
  return LENGTH.test(column) ? `${label} (cm)` : label;
}

/** The column that fills a field of the pot form. */
export function columnOfField(field: string): PasteColumn | undefined {
  return COLUMNS.find((column) => column === field || (isOtherwise(column) && OTHERWISE[column] === field));
}

/** The column that a heading means, by its own word or by the name that the page shows; undefined when there is none. */
export function columnOf(heading: string, words: Words): PasteColumn | undefined {
  const called = bare(heading.replace(/\(cm\)\s*$/i, ""));
  return COLUMNS.find((column) => [column, columnLabel(column, words)].some((name) => bare(name) === called));
}
