import type { JournalEntry } from "../../../core/journal/entry.ts";
import type { Collection } from "../../../core/plan/collection.ts";
import type { Pot } from "../../../core/pot/pot.ts";
import type { Problem } from "../../../core/problem.ts";
import type { Words } from "../../words/words.ts";
import type { Typed } from "../forms/form-problems.ts";
import { chosenByName, pasteChoices } from "./paste-choices.ts";
import { NEW_POT_TYPED, potOfForm } from "./pot-form.tsx";

/** Columns of a pasted table, in the order of the example; those of the pot form, with mix and spot by name. */
export const PASTE_COLUMNS = [
  "name",
  "groupId",
  "count",
  "canopyWidthCm",
  "plantHeightCm",
  "shape",
  "topCm",
  "baseCm",
  "heightCm",
  "material",
  "mix",
  "spot",
] as const;

export interface PastedPot {
  readonly pot: Pot;
  /** That tell its past. */
  readonly entries: readonly JournalEntry[];
}

export interface PastedRow {
  /** As counted in what was pasted, the heading being row 1. */
  readonly rowNumber: number;
  readonly problems: readonly Problem[];
}

export type PasteRead =
  | { ok: true; pots: readonly PastedPot[] }
  | { ok: false; problems: readonly Problem[]; rows: readonly PastedRow[] };

/** A table pasted from a spreadsheet: every pot, or every fault of every row. Nothing is kept in part. */
export function pastedPots(
  text: string,
  at: { formId: string; nowUtcMs: number; collection: Collection; words: Words },
): PasteRead {
  const choices = pasteChoices(at.collection, at.words);
  const lines = text.split(/\r?\n/).filter((line) => line.trim() !== "");
  const heading = lines[0] ? cellsOf(lines[0], separatorOf(lines[0])) : [];
  const missing = PASTE_COLUMNS.filter((column) => !heading.includes(column));
  if (lines.length < 2 || missing.length > 0) {
    return { ok: false, problems: [headingProblem(missing)], rows: [] };
  }
  const reads = lines.slice(1).map((line, index) => {
    const cells = cellsOf(line, separatorOf(lines[0]!));
    const row = Object.fromEntries(heading.map((column, i) => [column, cells[i] ?? ""]));
    const typed = typedOfRow(chosenByName(row, choices), {
      formId: `${at.formId}-${index + 1}`,
      collection: at.collection,
    });
    return { rowNumber: index + 2, read: potOfForm(typed, at) };
  });
  const rows = reads.flatMap(({ rowNumber, read }) =>
    read.ok ? [] : [{ rowNumber, problems: read.problems }],
  );
  if (rows.length > 0) return { ok: false, problems: [], rows };
  return { ok: true, pots: reads.flatMap(({ read }) => (read.ok ? [read.value] : [])) };
}

function headingProblem(missing: readonly string[]): Problem {
  return missing.length > 0
    ? { code: "paste-columns", path: ["table"], data: { columns: missing.join(", ") } }
    : { code: "paste-empty", path: ["table"] };
}

/** Spreadsheets paste with tabs; files use semicolons or commas. */
function separatorOf(heading: string): string {
  return ["\t", ";", ","].find((mark) => heading.includes(mark)) ?? ",";
}

/** Cells of a line; one in quotes may hold the separator, and a doubled quote is one. [RFC 4180] */
function cellsOf(line: string, separator: string): string[] {
  const cells: string[] = [];
  let cell = "";
  let quoted = false;
  for (let i = 0; i < line.length; i++) {
    const mark = line[i]!;
    if (mark === '"' && quoted && line[i + 1] === '"') cell += line[++i];
    else if (mark === '"') quoted = !quoted;
    else if (mark === separator && !quoted) {
      cells.push(cell.trim());
      cell = "";
    } else cell += mark;
  }
  return [...cells, cell.trim()];
}

/** Mix and spot are named as the grower calls them, or by id. */
function typedOfRow(
  { mix = "", spot = "", ...row }: Record<string, string>,
  { formId, collection }: { formId: string; collection: Collection },
): Typed {
  const idOf = (list: readonly { id: string; name: string }[], called: string) =>
    list.find(({ id, name }) => id === called || name.toLowerCase() === called.toLowerCase())?.id ?? called;
  const filled = Object.entries(row).filter(([, value]) => value !== "");
  return {
    ...NEW_POT_TYPED,
    ...Object.fromEntries(filled),
    formId,
    mixId: idOf(collection.mixes, mix),
    spotId: idOf(collection.spots, spot),
  };
}
