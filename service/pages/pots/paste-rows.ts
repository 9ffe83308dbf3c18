import type { JournalEntry } from "../../../core/journal/entry.ts";
import type { Collection } from "../../../core/plan/collection.ts";
import type { Pot } from "../../../core/pot/pot.ts";
import type { Problem } from "../../../core/problem.ts";
import { tableRows } from "../../csv.ts";
import type { Words } from "../../words/words.ts";
import type { Typed } from "../forms/form-problems.ts";
import { chosenByName, type PasteChoices, pasteChoices } from "./paste-choices.ts";
import { columnOf, columnOfField, NEEDED_COLUMNS, type PasteColumn } from "./paste-columns.ts";
import { NEW_POT_TYPED, potOfForm } from "./pot-form.tsx";

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

interface PasteSetting {
  readonly formId: string;
  readonly nowUtcMs: number;
  readonly collection: Collection;
  readonly words: Words;
  /** Whether measures that would be asked about were confirmed, for all rows. */
  readonly vesselSure: boolean;
}

/** A table pasted from a spreadsheet: every pot, or every fault of every row. Nothing is kept in part. */
export function pastedPots(text: string, at: PasteSetting): PasteRead {
  const [heading, ...lines] = filledLines(text);
  const titles = heading?.cells ?? [];
  if (titles.length === 0)
    return { ok: false, problems: [{ code: "paste-nothing", path: ["table"] }], rows: [] };
  const columns = titles.map((title) => columnOf(title, at.words));
  const problems = headingProblems(titles, columns);
  if (problems.length > 0) return { ok: false, problems, rows: [] };
  if (lines.length === 0)
    return { ok: false, problems: [{ code: "paste-empty", path: ["table"] }], rows: [] };
  const choices = pasteChoices(at.collection, at.words);
  const reads = lines.map(({ rowNumber, cells }) => ({
    rowNumber,
    read: potOfRow(cells, { columns, choices, at, rowNumber }),
  }));
  const rows = reads.flatMap(({ rowNumber, read }) =>
    read.ok ? [] : [{ rowNumber, problems: read.problems }],
  );
  if (rows.length > 0) return { ok: false, problems: [], rows };
  return { ok: true, pots: reads.flatMap(({ read }) => (read.ok ? [read.value] : [])) };
}

interface Line {
  readonly rowNumber: number;
  readonly cells: readonly string[];
}

function filledLines(text: string): Line[] {
  const rows = tableRows(text, separatorOf(text));
  return rows
    .map((row, index) => ({ rowNumber: index + 1, cells: row.map((cell) => cell.trim()) }))
    .filter(({ cells }) => cells.some((cell) => cell !== ""));
}

/** Spreadsheets paste with tabs; files use semicolons or commas. */
function separatorOf(text: string): string {
  const heading = text.trimStart().split(/[\r\n]/, 1)[0]!;
  return ["\t", ";", ","].find((mark) => heading.includes(mark)) ?? ",";
}

/** What each heading means; undefined where nothing is known of it. */
type Columns = readonly (PasteColumn | undefined)[];

/** What the row of headings lacks, and what stands there that nothing is known of: it would be lost. */
function headingProblems(titles: readonly string[], columns: Columns): Problem[] {
  const told = (code: string, named: readonly string[]): Problem[] =>
    named.length > 0 ? [{ code, path: ["table"], data: { columns: named } }] : [];
  return [
    ...told(
      "paste-columns",
      NEEDED_COLUMNS.filter((column) => !columns.includes(column)),
    ),
    ...told(
      "paste-unknown",
      titles.filter((title, i) => title !== "" && columns[i] === undefined),
    ),
    ...told(
      "paste-twice",
      titles.filter((_, i) => columns[i] && columns.indexOf(columns[i]) < i),
    ),
  ];
}

type Row = Partial<Record<PasteColumn, string>>;

function potOfRow(
  cells: readonly string[],
  of: { columns: Columns; choices: readonly PasteChoices[]; at: PasteSetting; rowNumber: number },
): ReturnType<typeof potOfForm> {
  const { columns, choices, at, rowNumber } = of;
  if (cells.some((cell, i) => cell !== "" && columns[i] === undefined)) {
    return { ok: false, problems: [{ code: "paste-cells", path: ["row"] }] };
  }
  const row: Row = Object.fromEntries(
    columns.flatMap((column, i) => (column && cells[i] ? [[column, cells[i]]] : [])),
  );
  const typed = typedOfRow(chosenByName(row, choices), `${at.formId}-${rowNumber - 1}`, at);
  const read = potOfForm(typed, at);
  return read.ok ? read : { ok: false, problems: read.problems.map((problem) => withGiven(problem, row)) };
}

/** What is not one of its list, with what stood there; an empty cell is a missing one. */
function withGiven(problem: Problem, row: Row): Problem {
  const column = columnOfField(String(problem.path[0]));
  if (problem.code !== "not-chosen" || column === undefined) return problem;
  const given = row[column];
  return given === undefined ? { code: "missing", path: problem.path } : { ...problem, data: { given } };
}

function typedOfRow({ mix = "", spot = "", ...row }: Row, formId: string, at: PasteSetting): Typed {
  return {
    ...NEW_POT_TYPED,
    ...row,
    ...(row.plantedDay ? { planted: "on-day" } : {}),
    ...(at.vesselSure ? { vesselSure: "yes" } : {}),
    formId,
    mixId: mix,
    spotId: spot,
  };
}
