import type { Pot } from "../../core/pot/pot.ts";
import type { Outcome, Problem } from "../../core/problem.ts";
import { CollectionSchema } from "../case/collection-schema.ts";
import { readBy } from "../case/problems-from-zod.ts";
import { csvRows, csvText } from "../csv.ts";

const COLUMNS = [
  "id",
  "name",
  "groupId",
  "count",
  "canopyWidthCm",
  "plantHeightCm",
  "firstSpotId",
] as const satisfies readonly (keyof Pot)[];
const NUMBERS = new Set<string>(["count", "canopyWidthCm", "plantHeightCm"]);

const PotSchema = CollectionSchema.shape.pots.element;

/** Pots as a table for a spreadsheet (RFC 4180). The grower's own group values are left out: they need the export. */
export function potsCsv(pots: readonly Pot[]): string {
  return csvText([COLUMNS, ...pots.map((pot) => COLUMNS.map((name) => String(pot[name] ?? "")))]);
}

/** Reads such a table back: columns in any order, further ones not allowed; every problem with its row. */
export function potsFromCsv(text: string): Outcome<Pot[]> {
  const [head = [], ...rows] = csvRows(text);
  const problems: Problem[] = COLUMNS.filter((name) => name !== "count" && !head.includes(name)).map(
    (name) => ({
      code: "missing",
      path: [name],
    }),
  );
  const pots: Pot[] = [];
  rows.forEach((row, index) => {
    const read = readBy(
      PotSchema,
      Object.fromEntries(head.map((name, at) => [name, cell(name, row[at] ?? "")])),
    );
    if (read.ok) pots.push(read.value);
    else if (problems.every(({ path }) => path.length > 1))
      problems.push(...read.problems.map((one) => ({ ...one, path: [index, ...one.path] })));
  });
  return problems.length === 0 ? { ok: true, value: pots } : { ok: false, problems };
}

function cell(name: string, text: string): string | number | undefined {
  if (text === "") return undefined;
  return NUMBERS.has(name) && text.trim() !== "" && Number.isFinite(Number(text)) ? Number(text) : text;
}
